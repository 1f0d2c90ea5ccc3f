/* The one door to libxml2's HTML parser. */
#include <libxml/HTMLparser.h>
#include <stdlib.h>
#include <string.h>
#include <strings.h>

#include "import_internal.h"
#include "jarwright/library.h"

/* Nothing from the net, nothing on standard error. */
#define HTML_OPTIONS                                                                               \
	(HTML_PARSE_RECOVER | HTML_PARSE_NOERROR | HTML_PARSE_NOWARNING | HTML_PARSE_NONET |       \
	 HTML_PARSE_COMPACT)

/*
 * The library, and the Unicode library behind it, take longer to load than a whole answer of
 * check: so it is opened when a page is read, and stays open.
 */
static struct {
	__typeof__(&htmlNewParserCtxt) new_parser;
	__typeof__(&htmlCtxtReadMemory) read_memory;
	__typeof__(&htmlFreeParserCtxt) free_parser;
	__typeof__(&xmlDocGetRootElement) root;
	__typeof__(&xmlFreeDoc) free_doc;
	__typeof__(&xmlNodeGetContent) content;
	xmlFreeFunc *free_text;
} xml;

static bool open_library(struct error *err)
{
	const struct library_function functions[] = {
	    {"htmlNewParserCtxt", &xml.new_parser},
	    {"htmlCtxtReadMemory", &xml.read_memory},
	    {"htmlFreeParserCtxt", &xml.free_parser},
	    {"xmlDocGetRootElement", &xml.root},
	    {"xmlFreeDoc", &xml.free_doc},
	    {"xmlNodeGetContent", &xml.content},
	    {"xmlFree", &xml.free_text},
	};
	static bool opened;
	if (!opened)
		opened =
		    library_open("libxml2.so.2", functions, sizeof functions / sizeof *functions);
	return opened || error_failed(err, "import: the HTML library libxml2 cannot be loaded; "
					   "install the package libxml2");
}

static int depth_of(const xmlNode *node)
{
	int depth = 0;
	for (; node->parent; node = node->parent)
		depth++;
	return depth;
}

static bool is_shallow(xmlDocPtr doc)
{
	xmlNodePtr root = xml.root(doc);
	for (xmlNodePtr node = root; node; node = next_node(root, node))
		if (!node->children && depth_of(node) > IMPORT_DEPTH_MAX)
			return false;
	return true;
}

bool parse_html(const char *bytes, size_t length, xmlDocPtr *out, struct error *err)
{
	*out = NULL;
	if (!open_library(err))
		return false;
	htmlParserCtxtPtr parser = xml.new_parser();
	if (!parser)
		return import_no_memory(err);
	xmlDocPtr doc = xml.read_memory(parser, bytes, (int)length, NULL, "UTF-8", HTML_OPTIONS);
	/* The parser gives up on what is nested deeper than its own limit. */
	bool gave_up = parser->disableSAX != 0;
	bool starved = parser->errNo == XML_ERR_NO_MEMORY;
	xml.free_parser(parser);
	if (doc && !gave_up && !starved && is_shallow(doc)) {
		*out = doc;
		return true;
	}
	bool had = doc != NULL;
	xml.free_doc(doc);
	if (starved || !had)
		return import_no_memory(err);
	return import_too_deep(err);
}

xmlNodePtr html_root(xmlDocPtr doc)
{
	return xml.root(doc);
}

void html_release(xmlDocPtr doc)
{
	xml.free_doc(doc);
}

char *html_script(xmlNodePtr node)
{
	xmlChar *content = xml.content(node);
	char *copy = content ? strdup((const char *)content) : NULL;
	if (content)
		(*xml.free_text)(content);
	return copy;
}

xmlNodePtr next_node(xmlNodePtr root, xmlNodePtr node)
{
	if (node->children)
		return node->children;
	while (node != root && !node->next)
		node = node->parent;
	return node == root ? NULL : node->next;
}

static void put_node(FILE *out, const xmlNode *node)
{
	if (node->type == XML_ELEMENT_NODE) {
		const char *name = (const char *)node->name;
		if (strcasecmp(name, "li") == 0 || strcasecmp(name, "br") == 0)
			fputc('\n', out);
	} else if (node->type == XML_TEXT_NODE && node->content) {
		/* In HTML the end of a line of the file is a blank like any other. */
		for (const char *c = (const char *)node->content; *c; c++)
			fputc(*c == '\n' ? ' ' : *c, out);
	}
}

char *node_text(xmlNodePtr node)
{
	char *text = NULL;
	size_t size;
	FILE *stream = open_memstream(&text, &size);
	if (!stream)
		return NULL;
	for (xmlNodePtr at = node; at; at = next_node(node, at))
		put_node(stream, at);
	bool whole = ferror(stream) == 0;
	if (fclose(stream) == 0 && whole)
		return text;
	free(text);
	return NULL;
}
