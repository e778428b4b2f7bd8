formula_sources += \
	src/screed/thickness_rule.c

screedinclude_HEADERS = \
	src/screed/thickness_rule.h
