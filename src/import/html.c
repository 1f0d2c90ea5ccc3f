/* The one door to libxml2's HTML parser. */
#include <libxml/HTMLparser.h>
#include <stdlib.h>
#include <string.h>
#include <strings.h>

#include "import_internal.h"

/* Nothing from the net, nothing on standard error. */
#define HTML_OPTIONS                                                                               \
	(HTML_PARSE_RECOVER | HTML_PARSE_NOERROR | HTML_PARSE_NOWARNING | HTML_PARSE_NONET |       \
	 HTML_PARSE_COMPACT)

static int depth_of(const xmlNode *node)
{
	int depth = 0;
	for (; node->parent; node = node->parent)
		depth++;
	return depth;
}

static bool is_shallow(xmlDocPtr doc)
{
	xmlNodePtr root = xmlDocGetRootElement(doc);
	for (xmlNodePtr node = root; node; node = next_node(root, node))
		if (!node->children && depth_of(node) > IMPORT_DEPTH_MAX)
			return false;
	return true;
}

bool parse_html(const char *bytes, size_t length, xmlDocPtr *out, struct error *err)
{
	*out = NULL;
	htmlParserCtxtPtr parser = htmlNewParserCtxt();
	if (!parser)
		return import_no_memory(err);
	xmlDocPtr doc = htmlCtxtReadMemory(parser, bytes, (int)length, NULL, "UTF-8", HTML_OPTIONS);
	/* The parser gives up on what is nested deeper than its own limit. */
	bool gave_up = parser->disableSAX != 0;
	bool starved = parser->errNo == XML_ERR_NO_MEMORY;
	htmlFreeParserCtxt(parser);
	if (doc && !gave_up && !starved && is_shallow(doc)) {
		*out = doc;
		return true;
	}
	bool had = doc != NULL;
	xmlFreeDoc(doc);
	if (starved || !had)
		return import_no_memory(err);
	return import_too_deep(err);
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
