#include "base/number.h"

#include <locale.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* From here on every double is a whole number of small units anyway, and plain digits would overrun the buffer. */
static const double LARGEST_FIXED = 1e15;

/* The thread's locale while printf and strtod must see a point. newlocale() gives the built-in "C" locale, which exists
 * always and needs no memory. */
struct plain_locale {
    locale_t plain, before;
};

static struct plain_locale plain_locale_enter(void)
{
    struct plain_locale state = {.plain = newlocale(LC_ALL_MASK, "C", (locale_t)0)};
    if (state.plain == (locale_t)0)
        abort();
    state.before = uselocale(state.plain);
    return state;
}

static void plain_locale_leave(struct plain_locale state)
{
    uselocale(state.before);
    freelocale(state.plain);
}

static bool is_digit(char c)
{
    return c >= '0' && c <= '9';
}

static const char *skip_digits(const char *text)
{
    while (is_digit(*text))
        text++;
    return text;
}

/* [sign] digits [. digits] [e [sign] digits], one side of the point may be empty. */
static bool is_decimal_number(const char *text)
{
    if (*text == '+' || *text == '-')
        text++;
    const char *end = skip_digits(text);
    bool any = end > text;
    if (*end == '.') {
        text = end + 1;
        end = skip_digits(text);
        any = any || end > text;
    }
    if (!any)
        return false;
    if (*end == 'e' || *end == 'E') {
        text = end + 1;
        if (*text == '+' || *text == '-')
            text++;
        end = skip_digits(text);
        if (end == text)
            return false;
    }
    return *end == '\0';
}

bool number_parse(const char *text, double *value)
{
    if (!is_decimal_number(text))
        return false;
    struct plain_locale const state = plain_locale_enter();
    double const parsed = strtod(text, NULL);
    plain_locale_leave(state);
    if (!isfinite(parsed))
        return false;
    *value = parsed;
    return true;
}

const char *number_exact(double value, char buffer[NUMBER_TEXT])
{
    if (!isfinite(value))
        abort();
    struct plain_locale const state = plain_locale_enter();
    snprintf(buffer, NUMBER_TEXT, "%.10g", value == 0 ? 0.0 : value);
    plain_locale_leave(state);
    return buffer;
}

const char *number_fixed(double value, int decimals, char buffer[NUMBER_TEXT])
{
    static const double powers[] = {1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6};
    if (decimals < 0 || decimals > 6)
        abort();
    if (isnan(value))
        return strcpy(buffer, "-");
    if (isinf(value))
        return strcpy(buffer, value > 0 ? "unlimited" : "-unlimited");
    if (fabs(value) >= LARGEST_FIXED)
        return number_exact(value, buffer);
    /* The same addend as usc_tenths_from_dB(): a printed tenth is the tenth that was compared. */
    double const units = floor(value * powers[decimals] + 0.5 + 1e-7);
    struct plain_locale const state = plain_locale_enter();
    snprintf(buffer, NUMBER_TEXT, "%.*f", decimals, units == 0 ? 0.0 : units / powers[decimals]);
    plain_locale_leave(state);
    return buffer;
}

const char *number_short(double value, int decimals, char buffer[NUMBER_TEXT])
{
    number_fixed(value, decimals, buffer);
    char *point = strchr(buffer, '.');
    if (!point || strchr(buffer, 'e')) /* no decimals, or an exponent whose zeros count */
        return buffer;
    char *end = buffer + strlen(buffer);
    while (end[-1] == '0')
        *--end = '\0';
    if (end - 1 == point)
        *point = '\0';
    return buffer;
}
