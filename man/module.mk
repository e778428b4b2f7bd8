# man/underscreed-formulas.7 is what `underscreed formulas --man` prints; a test holds it to that.
dist_man_MANS = \
	man/underscreed.1 \
	man/underscreed-catalogue.1 \
	man/underscreed-compare.1 \
	man/underscreed-design.1 \
	man/underscreed-formats.1 \
	man/underscreed-formulas.1 \
	man/underscreed-limits.1 \
	man/underscreed-predict.1 \
	man/underscreed-rate.1 \
	man/underscreed-start.1 \
	man/underscreed-stiffness.1 \
	man/underscreed-catalogue.5 \
	man/underscreed-limits.5 \
	man/underscreed-practice.5 \
	man/underscreed-project.5 \
	man/underscreed-formulas.7
