/* underscreed: the library. Formulas of floating floors; plain structs in, plain structs out, no allocation in a
 * formula, no input or output, no globals. Link with -lunderscreed (pkg-config underscreed). */
#ifndef UNDERSCREED_H
#define UNDERSCREED_H

#include "base/tenths.h"
#include "base/formula.h"
#include "acoustics/bands.h"
#include "acoustics/rating.h"
#include "acoustics/reference_floor.h"
#include "acoustics/floating_floor.h"
#include "acoustics/dynamic_stiffness.h"
#include "acoustics/bare_slab.h"
#include "acoustics/transmission.h"
#include "acoustics/field_level.h"
#include "acoustics/sound_level.h"
#include "acoustics/impact_class.h"
#include "acoustics/measurement_uncertainty.h"
#include "screed/thickness_rule.h"

#endif
