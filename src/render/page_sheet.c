/* One batch on one page for the wall: recipe, process, loads, what stays as it is, seals. */
#include <string.h>

#include "jarwright/load_judge.h"
#include "jarwright/render_page.h"
#include "jarwright/render_paper.h"

#define BOXES_MAX 1000

/* The process is what is read from the canner: it is the largest thing on the page. */
static const char sheet_style[] =
    "@page{margin:8mm 12mm}\n"
    "html{font-size:10pt;line-height:1.25}\n"
    "h1{font-size:24pt}\n"
    "header{margin-bottom:1mm;padding-top:2mm}\n"
    "h2{margin:2.5mm 0 .3mm;font-size:13.5pt}\n"
    ".pair{display:grid;grid-template-columns:minmax(0,1fr) minmax(0,1fr);gap:0 8mm;"
    "align-items:start}\n"
    ".wide-left{grid-template-columns:minmax(0,6fr) minmax(0,5fr)}\n"
    "p{margin-bottom:1mm}\n"
    "td,th{padding:.4mm 1mm}\n"
    "th[scope=row]{font-weight:400}\n"
    ".amount{font-weight:700;width:45%}\n"
    ".source{font-size:8pt;line-height:1.2}\n"
    ".process{border:1mm solid var(--ink);padding:2.5mm 4mm .5mm;margin-top:3mm}\n"
    ".process h2{margin:0}\n"
    ".big{font-size:38pt;font-weight:700;line-height:1;margin:0 0 .5mm}\n"
    ".big small{font-size:17pt}\n"
    ".at-psi{font-size:28pt;white-space:nowrap}\n"
    "dl{display:grid;grid-template-columns:max-content minmax(0,1fr);gap:0 3mm;margin:1mm 0}\n"
    "dt{color:var(--soft)}\n"
    "dd{margin:0;font-weight:700}\n"
    "ol,ul{margin-bottom:1mm}\n"
    "li{margin-bottom:.4mm}\n"
    ".fixed li{font-weight:700}\n"
    ".fixed small{font-weight:400;color:var(--soft)}\n"
    ".boxes{display:grid;grid-template-columns:repeat(auto-fill,minmax(16mm,1fr));gap:1.5mm;"
    "padding:0;list-style:none;break-inside:auto}\n"
    ".boxes li{display:flex;align-items:center;gap:1.5mm;margin:0}\n"
    ".boxes span{width:5.5mm;height:5.5mm;border:.4mm solid var(--ink);flex:none}\n"
    "footer{margin-top:2mm;padding-top:1mm}\n"
    "@media screen and (max-width:700px){.pair{display:block}}\n";

static bool is_tested(const struct paper_sheet *sheet)
{
	return sheet->process && sheet->process->minutes > 0;
}

static void ingredients(FILE *out, const struct paper_sheet *sheet)
{
	fputs("<section>\n<h2>Recipe</h2>\n", out);
	if (*sheet->makes)
		html_print(out, "<p>Makes %s.</p>\n", sheet->makes);
	if (sheet->ingredients_n > 0) {
		fputs("<table>\n<caption>Everything, in your measures</caption>\n<thead><tr>"
		      "<th scope=\"col\">what</th><th scope=\"col\" class=\"amount\">amount</th>"
		      "</tr></thead>\n<tbody>\n",
		      out);
		for (size_t i = 0; i < sheet->ingredients_n; i++)
			html_print(out,
				   "<tr><th scope=\"row\">%s</th><td class=\"amount\">%s</td>"
				   "</tr>\n",
				   sheet->ingredients[i].what, sheet->ingredients[i].amount);
		fputs("</tbody>\n</table>\n", out);
	}
	if (sheet->directions_n > 0)
		fputs("<ul>\n", out);
	for (size_t i = 0; i < sheet->directions_n; i++)
		html_print(out, "<li>%s</li>\n", sheet->directions[i]);
	if (sheet->directions_n > 0)
		fputs("</ul>\n", out);
	if (sheet->ingredients_n == 0 && sheet->directions_n == 0 && is_tested(sheet))
		fputs("<p>There is none here: take it from the publication, unchanged.</p>\n", out);
	if (*sheet->note)
		html_print(out, "<p class=\"source\">%s</p>\n", sheet->note);
	fputs("</section>\n", out);
}

static void fact(FILE *out, const char *name, const char *words)
{
	if (*words)
		html_print(out, "<dt>%s</dt><dd>%s</dd>\n", name, words);
}

static void tested(FILE *out, const struct sheet_process *p)
{
	if (p->psi > 0)
		html_print(
		    out,
		    "<p class=\"big at-psi\">%d <small>min at</small> %d <small>psi</small></p>\n",
		    p->minutes, p->psi);
	else
		html_print(out, "<p class=\"big\">%d <small>minutes</small></p>\n", p->minutes);
	if (p->vent > 0)
		html_print(out, "<p><b>Vent %d minutes first.</b></p>\n", p->vent);
	fputs("<dl>\n", out);
	fact(out, "canner", p->canner);
	fact(out, "jars", p->jar);
	fact(out, "pack", p->pack);
	fact(out, "headspace", p->headspace);
	fact(out, "elevation", p->elevation);
	fputs("</dl>\n", out);
	/* AIB 539 (2015), guide 1: p. 1-22 for pressure, p. 1-18 for boiling water. */
	html_print(out,
		   "<p><b>%s lost? Bring it back, and start the whole time again.</b></p>\n"
		   "<p class=\"source\">%s</p>\n",
		   p->psi > 0 ? "Pressure" : "Boil or steam", p->source);
}

static void says(FILE *out, const struct sheet_fixed *list, size_t n)
{
	if (n == 0)
		return;
	fputs("<ul class=\"fixed\">\n", out);
	for (size_t i = 0; i < n; i++)
		html_print(out, "<li>%s <small>%s</small></li>\n", list[i].says, list[i].source);
	fputs("</ul>\n", out);
}

static void not_tested(FILE *out, const struct paper_sheet *sheet)
{
	fputs("<p class=\"big\"><small>Not for the shelf</small></p>\n", out);
	if (sheet->unclear)
		fputs("<p>There is no process before this is known:</p>\n", out);
	else
		fputs("<p>No tested process covers this. Keep it in the refrigerator, or freeze "
		      "it.</p>\n",
		      out);
	says(out, sheet->reasons, sheet->reasons_n);
}

static void process(FILE *out, const struct paper_sheet *sheet)
{
	fputs("<section class=\"process\">\n<h2>Process</h2>\n", out);
	if (is_tested(sheet))
		tested(out, sheet->process);
	else
		not_tested(out, sheet);
	fputs("</section>\n", out);
}

static void steps(FILE *out, const struct paper_sheet *sheet)
{
	if (sheet->steps_n == 0)
		return;
	fputs("<section>\n<h2>One load, step by step</h2>\n<ol>\n", out);
	for (size_t i = 0; i < sheet->steps_n; i++) {
		const struct sheet_step *step = &sheet->steps[i];
		html_print(out, *step->time ? "<li>%s: <b>%s</b></li>\n" : "<li>%s%s</li>\n",
			   step->what, step->time);
	}
	fputs("</ol>\n</section>\n", out);
}

/* A page with a process and boxes for seals must not pass for a word that the load was right. */
static void outcome(FILE *out, const struct sheet_load *load)
{
	if (*load->outcome && strcmp(load->outcome, load_outcome_word(LOAD_PROCESSED)) != 0)
		html_print(out, "; <b>%s: not for the shelf</b>", load->outcome);
}

static void loads(FILE *out, const struct paper_sheet *sheet)
{
	if (sheet->loads_n == 0)
		return;
	html_print(out,
		   "<section>\n<h2>Loads</h2>\n<table>\n<caption>%s</caption>\n<thead><tr>"
		   "<th scope=\"col\">load</th><th scope=\"col\">jars</th>"
		   "<th scope=\"col\">begins</th><th scope=\"col\">out</th></tr></thead>\n"
		   "<tbody>\n",
		   *sheet->loads[0].outcome ? "As they are in the log"
					    : "Planned times; write the true ones beside them");
	for (size_t i = 0; i < sheet->loads_n; i++) {
		const struct sheet_load *load = &sheet->loads[i];
		html_print(out, "<tr><th scope=\"row\">%d</th><td>%d to %d</td><td>%s</td><td>%s",
			   (int)i + 1, load->first, load->last, load->begins, load->out);
		outcome(out, load);
		fputs("</td></tr>\n", out);
	}
	fputs("</tbody>\n</table>\n</section>\n", out);
}

static void fixed(FILE *out, const struct paper_sheet *sheet)
{
	if (sheet->fixed_n == 0)
		return;
	fputs("<section>\n<h2>Do not change</h2>\n", out);
	says(out, sheet->fixed, sheet->fixed_n);
	fputs("</section>\n", out);
}

static void seals(FILE *out, const struct paper_sheet *sheet)
{
	if (sheet->jars < 1 || sheet->jars > BOXES_MAX || !is_tested(sheet))
		return;
	fputs("<section>\n<h2>Seals</h2>\n"
	      "<p>Let the jars cool 12 to 24 hours, take off the bands, and test each. Sealed: "
	      "the lid is curved inward, does not spring when pressed in the middle, does not "
	      "sound dull when tapped. Tick a jar that is sealed. One that is not: within 24 "
	      "hours process it again with a new lid, or refrigerate it, or freeze it.</p>\n"
	      "<ul class=\"boxes\">\n",
	      out);
	for (int jar = 1; jar <= sheet->jars; jar++)
		fprintf(out, "<li><span></span>%02d</li>\n", jar);
	fputs("</ul>\n<p class=\"source\">Complete Guide to Home Canning, USDA Agriculture "
	      "Information Bulletin No. 539, 2015, guide 1, p. 1-25 and 1-26</p>\n</section>\n",
	      out);
}

static void sources(FILE *out, const struct paper_sheet *sheet)
{
	if (sheet->sources_n == 0)
		return;
	fputs("<p class=\"source\">", out);
	for (size_t i = 0; i < sheet->sources_n; i++)
		html_print(out, "%s%s", i > 0 ? "; " : "", sheet->sources[i]);
	fputs("</p>\n", out);
}

/* "batch 26-041 · 2026-08-14", of what there is. */
static void kicker(const struct paper_sheet *sheet, char *buffer, size_t size)
{
	bool both = *sheet->batch && *sheet->day;
	snprintf(buffer, size, "%s%s%s%s", *sheet->batch ? "batch " : "", sheet->batch,
		 both ? " · " : "", sheet->day);
}

void sheet_html(FILE *out, const struct paper_sheet *sheet)
{
	char over[WORDS_BUFFER];
	kicker(sheet, over, sizeof over);
	html_begin(out, sheet->title, over, sheet_style);
	fputs("<div class=\"pair wide-left\">\n", out);
	ingredients(out, sheet);
	process(out, sheet);
	fputs("</div>\n", out);
	fixed(out, sheet);
	fputs("<div class=\"pair\">\n", out);
	steps(out, sheet);
	loads(out, sheet);
	fputs("</div>\n", out);
	seals(out, sheet);
	sources(out, sheet);
	html_end(out, sheet->edition);
}
