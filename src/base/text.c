#include "base/text.h"

#include <stdbool.h>
#include <stdio.h>
#include <string.h>

enum { REPLACEMENT = 0xfffd };

struct range {
    unsigned first, last;
};

/* Marks that sit on the letter before them, and signs without width. Unicode 15, general categories Mn, Me and Cf; of
 * the scripts of South and South-East Asia only the commonest. */
static const struct range no_width[] = {
    {0x0300, 0x036f},   {0x0483, 0x0489},   {0x0591, 0x05bd}, {0x05bf, 0x05bf}, {0x05c1, 0x05c2}, {0x05c4, 0x05c5},
    {0x0610, 0x061a},   {0x064b, 0x065f},   {0x0670, 0x0670}, {0x06d6, 0x06dc}, {0x06df, 0x06e4}, {0x06e7, 0x06e8},
    {0x06ea, 0x06ed},   {0x093a, 0x093a},   {0x093c, 0x093c}, {0x0941, 0x0948}, {0x094d, 0x094d}, {0x0e31, 0x0e31},
    {0x0e34, 0x0e3a},   {0x0e47, 0x0e4e},   {0x1ab0, 0x1ace}, {0x1dc0, 0x1dff}, {0x200b, 0x200f}, {0x2060, 0x2064},
    {0x20d0, 0x20f0},   {0x302a, 0x302d},   {0x3099, 0x309a}, {0xfe00, 0xfe0f}, {0xfe20, 0xfe2f}, {0xfeff, 0xfeff},
    {0xe0001, 0xe007f}, {0xe0100, 0xe01ef},
};

/* Two columns: Unicode 15, East Asian width W and F. */
static const struct range two_columns[] = {
    {0x1100, 0x115f},   {0x231a, 0x231b},   {0x2329, 0x232a},   {0x23e9, 0x23ec},   {0x23f0, 0x23f0},
    {0x23f3, 0x23f3},   {0x25fd, 0x25fe},   {0x2614, 0x2615},   {0x2648, 0x2653},   {0x267f, 0x267f},
    {0x2693, 0x2693},   {0x26a1, 0x26a1},   {0x26aa, 0x26ab},   {0x26bd, 0x26be},   {0x26c4, 0x26c5},
    {0x26ce, 0x26ce},   {0x26d4, 0x26d4},   {0x26ea, 0x26ea},   {0x26f2, 0x26f3},   {0x26f5, 0x26f5},
    {0x26fa, 0x26fa},   {0x26fd, 0x26fd},   {0x2705, 0x2705},   {0x270a, 0x270b},   {0x2728, 0x2728},
    {0x274c, 0x274c},   {0x274e, 0x274e},   {0x2753, 0x2755},   {0x2757, 0x2757},   {0x2795, 0x2797},
    {0x27b0, 0x27b0},   {0x27bf, 0x27bf},   {0x2b1b, 0x2b1c},   {0x2b50, 0x2b50},   {0x2b55, 0x2b55},
    {0x2e80, 0x3029},   {0x302e, 0x303e},   {0x3041, 0x3098},   {0x309b, 0x4dbf},   {0x4e00, 0xa4cf},
    {0xa960, 0xa97c},   {0xac00, 0xd7a3},   {0xf900, 0xfaff},   {0xfe10, 0xfe19},   {0xfe30, 0xfe6b},
    {0xff01, 0xff60},   {0xffe0, 0xffe6},   {0x16fe0, 0x18cff}, {0x1aff0, 0x1b2fb}, {0x1f004, 0x1f004},
    {0x1f0cf, 0x1f0cf}, {0x1f18e, 0x1f18e}, {0x1f191, 0x1f19a}, {0x1f200, 0x1f320}, {0x1f32d, 0x1f335},
    {0x1f337, 0x1f37c}, {0x1f37e, 0x1f393}, {0x1f3a0, 0x1f3ca}, {0x1f3cf, 0x1f3d3}, {0x1f3e0, 0x1f3f0},
    {0x1f3f4, 0x1f3f4}, {0x1f3f8, 0x1f43e}, {0x1f440, 0x1f440}, {0x1f442, 0x1f4fc}, {0x1f4ff, 0x1f53d},
    {0x1f54b, 0x1f54e}, {0x1f550, 0x1f567}, {0x1f57a, 0x1f57a}, {0x1f595, 0x1f596}, {0x1f5a4, 0x1f5a4},
    {0x1f5fb, 0x1f64f}, {0x1f680, 0x1f6c5}, {0x1f6cc, 0x1f6cc}, {0x1f6d0, 0x1f6d2}, {0x1f6d5, 0x1f6d7},
    {0x1f6dc, 0x1f6df}, {0x1f6eb, 0x1f6ec}, {0x1f6f4, 0x1f6fc}, {0x1f7e0, 0x1f7eb}, {0x1f7f0, 0x1f7f0},
    {0x1f90c, 0x1f93a}, {0x1f93c, 0x1f945}, {0x1f947, 0x1f9ff}, {0x1fa70, 0x1faff}, {0x20000, 0x3fffd},
};

/* Signs that change the direction or the line of the text around them. */
static const struct range steering[] = {
    {0x061c, 0x061c},
    {0x200e, 0x200f},
    {0x2028, 0x202e},
    {0x2066, 0x2069},
};

#define COUNT(ARRAY) (sizeof(ARRAY) / sizeof(ARRAY)[0])

/* Ranges are in ascending order. */
static bool is_among(unsigned code, const struct range ranges[], size_t count)
{
    size_t low = 0, high = count;
    while (low < high) {
        size_t const middle = low + (high - low) / 2;
        if (code > ranges[middle].last)
            low = middle + 1;
        else
            high = middle;
    }
    return low < count && code >= ranges[low].first;
}

size_t text_decode(const char *text, unsigned *code)
{
    static const unsigned lowest[] = {0, 0, 0x80, 0x800, 0x10000}; /* shorter forms exist below these */
    unsigned char const first = (unsigned char)text[0];
    *code = first;
    if (first < 0x80)
        return first == 0 ? 0 : 1;
    size_t const length = first >= 0xf0 && first < 0xf8   ? 4
                          : first >= 0xe0 && first < 0xf0 ? 3
                          : first >= 0xc0 && first < 0xe0 ? 2
                                                          : 0;
    unsigned value = length == 0 ? 0 : first & (0x7fu >> length);
    *code = REPLACEMENT;
    for (size_t i = 1; i < length; i++) {
        unsigned char const next = (unsigned char)text[i]; /* a NUL fails here, so nothing behind it is read */
        if ((next & 0xc0) != 0x80)
            return 0;
        value = value << 6 | (next & 0x3f);
    }
    if (length == 0 || value < lowest[length] || value > 0x10ffff || (value >= 0xd800 && value <= 0xdfff))
        return 0;
    *code = value;
    return length;
}

/* Columns and bytes of what stands first in a text that is not at its end; an invalid byte stands alone. */
static int first_width(const char *text, size_t *bytes)
{
    unsigned code;
    *bytes = text_decode(text, &code);
    if (*bytes == 0)
        *bytes = 1;
    if (code < 0x300)
        return 1;
    if (is_among(code, no_width, COUNT(no_width)))
        return 0;
    return is_among(code, two_columns, COUNT(two_columns)) ? 2 : 1;
}

int text_width_of(const char *text, size_t bytes)
{
    int width = 0;
    const char *end = text + bytes;
    for (size_t step; text < end && *text; text += step)
        width += first_width(text, &step);
    return width;
}

int text_width(const char *text)
{
    return text_width_of(text, strlen(text));
}

size_t text_head(const char *text, int columns)
{
    const char *end = text;
    for (size_t bytes; *end; end += bytes) {
        columns -= first_width(end, &bytes);
        if (columns < 0)
            break;
    }
    return (size_t)(end - text);
}

/* The escape for what stands first in the text, "" when it may be printed as it is. */
static void make_visible(const char *text, size_t bytes, unsigned code, char escape[12])
{
    escape[0] = '\0';
    if (bytes == 0)
        snprintf(escape, 12, "\\x%02x", (unsigned)(unsigned char)text[0]);
    else if (code < 0x20 || code == 0x7f)
        snprintf(escape, 12, "\\x%02x", code);
    else if ((code >= 0x80 && code <= 0x9f) || is_among(code, steering, COUNT(steering)))
        snprintf(escape, 12, "\\u%04x", code);
}

const char *text_safe(struct arena *arena, const char *text)
{
    char *safe = arena_take_many(arena, strlen(text) + 1, 4); /* an escape is at most 4 times as long as its cause */
    char *end = safe;
    while (*text) {
        unsigned code;
        char escape[12];
        size_t const bytes = text_decode(text, &code);
        make_visible(text, bytes, code, escape);
        if (escape[0])
            end = stpcpy(end, escape);
        else
            end = (char *)memcpy(end, text, bytes) + bytes;
        text += bytes == 0 ? 1 : bytes;
    }
    return safe;
}

struct spelling {
    unsigned code;
    const char *ascii;
};

/* In ascending order of the code point. */
static const struct spelling spellings[] = {
    {0xa0, " "},          {0xa3, "GBP"},     {0xa7, "section "}, {0xab, "\""},      {0xad, ""},
    {0xb0, "deg"},        {0xb1, "+-"},      {0xb2, "2"},        {0xb3, "3"},       {0xb4, "'"},
    {0xb5, "u"},          {0xb7, "*"},       {0xb9, "1"},        {0xbb, "\""},      {0xbc, "1/4"},
    {0xbd, "1/2"},        {0xbe, "3/4"},     {0xc0, "A"},        {0xc1, "A"},       {0xc2, "A"},
    {0xc3, "A"},          {0xc4, "Ae"},      {0xc5, "A"},        {0xc6, "AE"},      {0xc7, "C"},
    {0xc8, "E"},          {0xc9, "E"},       {0xca, "E"},        {0xcb, "E"},       {0xcc, "I"},
    {0xcd, "I"},          {0xce, "I"},       {0xcf, "I"},        {0xd1, "N"},       {0xd2, "O"},
    {0xd3, "O"},          {0xd4, "O"},       {0xd5, "O"},        {0xd6, "Oe"},      {0xd7, "x"},
    {0xd8, "O"},          {0xd9, "U"},       {0xda, "U"},        {0xdb, "U"},       {0xdc, "Ue"},
    {0xdd, "Y"},          {0xdf, "ss"},      {0xe0, "a"},        {0xe1, "a"},       {0xe2, "a"},
    {0xe3, "a"},          {0xe4, "ae"},      {0xe5, "a"},        {0xe6, "ae"},      {0xe7, "c"},
    {0xe8, "e"},          {0xe9, "e"},       {0xea, "e"},        {0xeb, "e"},       {0xec, "i"},
    {0xed, "i"},          {0xee, "i"},       {0xef, "i"},        {0xf1, "n"},       {0xf2, "o"},
    {0xf3, "o"},          {0xf4, "o"},       {0xf5, "o"},        {0xf6, "oe"},      {0xf7, "/"},
    {0xf8, "o"},          {0xf9, "u"},       {0xfa, "u"},        {0xfb, "u"},       {0xfc, "ue"},
    {0xfd, "y"},          {0xff, "y"},       {0x107, "c"},       {0x10d, "c"},      {0x119, "e"},
    {0x11b, "e"},         {0x141, "L"},      {0x142, "l"},       {0x144, "n"},      {0x151, "o"},
    {0x152, "OE"},        {0x153, "oe"},     {0x159, "r"},       {0x160, "S"},      {0x161, "s"},
    {0x171, "u"},         {0x17d, "Z"},      {0x17e, "z"},       {0x394, "delta"},  {0x3a3, "sigma"},
    {0x3a9, "ohm"},       {0x3b1, "alpha"},  {0x3b2, "beta"},    {0x3b3, "gamma"},  {0x3b4, "delta"},
    {0x3b5, "epsilon"},   {0x3b7, "eta"},    {0x3b8, "theta"},   {0x3bb, "lambda"}, {0x3bc, "u"},
    {0x3bd, "nu"},        {0x3c0, "pi"},     {0x3c1, "rho"},     {0x3c3, "sigma"},  {0x3c4, "tau"},
    {0x3c6, "phi"},       {0x3c9, "omega"},  {0x2009, " "},      {0x2010, "-"},     {0x2011, "-"},
    {0x2012, "-"},        {0x2013, "-"},     {0x2014, "-"},      {0x2018, "'"},     {0x2019, "'"},
    {0x201a, "'"},        {0x201c, "\""},    {0x201d, "\""},     {0x201e, "\""},    {0x2022, "*"},
    {0x2026, "..."},      {0x202f, " "},     {0x2030, "permil"}, {0x2032, "'"},     {0x2033, "''"},
    {0x2070, "0"},        {0x2074, "4"},     {0x2075, "5"},      {0x2076, "6"},     {0x2077, "7"},
    {0x2078, "8"},        {0x2079, "9"},     {0x207b, "-"},      {0x2080, "0"},     {0x2081, "1"},
    {0x2082, "2"},        {0x2083, "3"},     {0x2084, "4"},      {0x2085, "5"},     {0x2086, "6"},
    {0x2087, "7"},        {0x2088, "8"},     {0x2089, "9"},      {0x20ac, "EUR"},   {0x2190, "<-"},
    {0x2192, "->"},       {0x2206, "delta"}, {0x2211, "sum"},    {0x2212, "-"},     {0x221a, "sqrt"},
    {0x221e, "infinite"}, {0x2248, "~"},     {0x2260, "!="},     {0x2264, "<="},    {0x2265, ">="},
    {0x22c5, "*"},        {0x2500, "-"},     {0x2502, "|"},
};

static const char *spelling_of(unsigned code)
{
    if (code >= 0x300 && is_among(code, no_width, COUNT(no_width)))
        return ""; /* an accent on a letter that stays */
    for (size_t i = 0; i < COUNT(spellings) && spellings[i].code <= code; i++)
        if (spellings[i].code == code)
            return spellings[i].ascii;
    return "?";
}

const char *text_ascii(struct arena *arena, const char *text)
{
    char *ascii = arena_take_many(arena, strlen(text) + 1, 4); /* no spelling is over 4 times as long as its sign */
    char *end = ascii;
    while (*text) {
        unsigned code;
        size_t const bytes = text_decode(text, &code);
        if (bytes == 1)
            *end++ = *text;
        else
            end = stpcpy(end, spelling_of(code));
        text += bytes == 0 ? 1 : bytes;
    }
    return ascii;
}
