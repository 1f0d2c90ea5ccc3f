/* The look of every page. */
#ifndef JARWRIGHT_RENDER_PAGE_STYLE_H
#define JARWRIGHT_RENDER_PAGE_STYLE_H

/* Prints the same with and without background colours: lines carry every meaning. */
extern const char page_style[];

#endif
