dist_doc_DATA = \
	README.md \
	docs/changes.md \
	docs/compare.md \
	docs/conformance.md \
	docs/performance.md \
	docs/theory.md \
	docs/tutorial.md

EXTRA_DIST += DEVELOPERS.md
