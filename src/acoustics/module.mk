formula_sources += \
	src/acoustics/acoustic_formulas.c \
	src/acoustics/bands.c \
	src/acoustics/bare_slab.c \
	src/acoustics/dynamic_stiffness.c \
	src/acoustics/field_level.c \
	src/acoustics/floating_floor.c \
	src/acoustics/impact_class.c \
	src/acoustics/measurement_uncertainty.c \
	src/acoustics/rating.c \
	src/acoustics/reference_floor.c \
	src/acoustics/sound_level.c \
	src/acoustics/transmission.c

acousticsinclude_HEADERS = \
	src/acoustics/acoustic_formulas.h \
	src/acoustics/bands.h \
	src/acoustics/bare_slab.h \
	src/acoustics/dynamic_stiffness.h \
	src/acoustics/field_level.h \
	src/acoustics/floating_floor.h \
	src/acoustics/impact_class.h \
	src/acoustics/measurement_uncertainty.h \
	src/acoustics/rating.h \
	src/acoustics/reference_floor.h \
	src/acoustics/sound_level.h \
	src/acoustics/transmission.h
