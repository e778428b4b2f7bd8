# A file of data is named here once; what is embedded, installed and distributed follows from these lists.
cataloguedir = $(pkgdatadir)/catalogue
dist_catalogue_DATA = \
	data/catalogue/floorings.json \
	data/catalogue/screeds.json \
	data/catalogue/underlays.json

limitsdir = $(pkgdatadir)/limits
dist_limits_DATA = \
	data/limits/europe.json \
	data/limits/north-america.json \
	data/limits/oceania.json

practicedir = $(pkgdatadir)/practice
dist_practice_DATA = \
	data/practice/laying.json \
	data/practice/thickness.json

schemadir = $(pkgdatadir)/schema
dist_schema_DATA = \
	data/schema/catalogue.json \
	data/schema/limits.json \
	data/schema/practice.json \
	data/schema/rate.json \
	data/schema/stiffness.json \
	data/schema/compare.json \
	data/schema/project.json

demodir = $(pkgdatadir)/demo
dist_demo_DATA = \
	data/demo/covering-improvement.csv \
	data/demo/field-guest-room.csv \
	data/demo/first-room.json \
	data/demo/linden-court.json \
	data/demo/many-spectra.csv \
	data/demo/own-catalogue.json \
	data/demo/readings-guest-room.csv \
	data/demo/retrofit.json \
	data/demo/specimens.csv

# Carried inside the program.
embedded_data = $(dist_catalogue_DATA) $(dist_limits_DATA) $(dist_practice_DATA)
