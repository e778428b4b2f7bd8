/* All benches in turn. */
#include "bench/benches.h"

int main(void)
{
    rating_bench();
    design_bench();
    return 0;
}
