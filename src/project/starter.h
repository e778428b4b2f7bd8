/* A first project file, short enough to type. */
#ifndef USC_PROJECT_STARTER_H
#define USC_PROJECT_STARTER_H

/* Valid text of the format underscreed-project/1, ten lines; its figures are invented. */
extern const char starter_project[];

#endif
