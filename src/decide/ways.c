/* The published ways for a food at an elevation, nearest to the one asked for first. */
#include <stdlib.h>
#include <string.h>

#include "decide_internal.h"

/* How far a way is from the request: canner first, then pack, then jar. */
static int distance(const struct request *rq, const struct way *way)
{
	int jars = rq->jar.stated && !rq->jar.by_volume ? abs((int)rq->jar.jar - (int)way->jar) : 0;
	int canner = rq->canner_choice == CHOICE_CANNER && rq->canner == way->canner ? 0 : 100;
	int pack = rq->pack == PACK_UNSTATED || rq->pack == way->pack ? 0 : 10;
	return canner + pack + jars;
}

static bool same_way(const struct way *a, const struct way *b)
{
	return a->canner == b->canner && a->pack == b->pack && a->jar == b->jar;
}

/* Keeps the list sorted; a way found twice, or farther than a full list's last, is dropped. */
static size_t insert(const struct request *rq, struct way *ways, size_t n, size_t max,
		     struct way way)
{
	for (size_t i = 0; i < n; i++)
		if (same_way(&ways[i], &way))
			return n;
	size_t at = n;
	while (at > 0 && distance(rq, &ways[at - 1]) > distance(rq, &way))
		at--;
	if (at >= max)
		return n;
	size_t kept = n < max ? n + 1 : max;
	memmove(&ways[at + 1], &ways[at], (kept - at - 1) * sizeof *ways);
	ways[at] = way;
	return kept;
}

/* The request for one published line; what the cook said of acid and elevation is kept. */
static struct request request_for(const struct reference *ref, const struct request *asked,
				  enum canner canner, enum pack pack, enum jar jar)
{
	struct request rq = *asked;
	rq.canner_choice = CHOICE_CANNER;
	rq.canner = canner;
	rq.method = NULL;
	rq.closure = NULL;
	rq.container = NULL;
	rq.pack = pack;
	rq.psi = PSI_UNSTATED;
	rq.jar = (struct jar_choice){.stated = true, .jar = jar};
	if (rq.vinegar == VINEGAR_UNSTATED) {
		rq.vinegar = VINEGAR_LABELLED;
		rq.vinegar_milli_percent = ref->rules[RULE_VINEGAR_WEAK].limit_milli;
	}
	return rq;
}

/* Is this line's jar of use to the cook: her own, the next larger, or any smaller one? */
static bool jar_fits(const struct request *asked, const struct reference *ref,
		     const struct process_table *table, size_t line)
{
	if (!asked->jar.stated)
		return true;
	int64_t volume =
	    asked->jar.by_volume ? asked->jar.volume_nl : ref->jars[asked->jar.jar].volume_nl;
	enum jar jar = table->lines[line].jar;
	if (ref->jars[jar].volume_nl < volume)
		return true;
	for (size_t i = 0; i < line; i++)
		if (table->lines[i].jar < jar && ref->jars[table->lines[i].jar].volume_nl >= volume)
			return false;
	return true;
}

/* Decides one line of a table in one canner; true if that is tested. */
static bool try_way(const struct reference *ref, const struct request *asked, struct way *way)
{
	struct request rq = request_for(ref, asked, way->canner, way->pack, way->jar);
	struct decision d;
	decide(ref, &rq, &d);
	way->minutes = d.process.minutes;
	way->psi = d.process.psi;
	return d.verdict == VERDICT_TESTED;
}

size_t decide_ways(const struct reference *ref, const struct request *request, struct way *out,
		   size_t max)
{
	const struct food *food = request->food.kind == MATCH_ONE ? request->food.foods[0] : NULL;
	struct decision asked;
	decide(ref, request, &asked);
	size_t n = 0;
	for (size_t t = 0; food && t < food->tables_n; t++) {
		const struct process_table *table = &food->tables[t];
		/* A boiling-water line may serve in steam too; decide() says when. */
		enum canner canners[] = {table->canner, CANNER_STEAM};
		size_t canners_n = table->canner == CANNER_BOILING_WATER ? 2 : 1;
		for (size_t line = 0; line < table->lines_n; line++) {
			if (!jar_fits(request, ref, table, line))
				continue;
			for (size_t c = 0; c < canners_n; c++) {
				struct way way = {.canner = canners[c],
						  .pack = table->pack,
						  .jar = table->lines[line].jar};
				bool same = asked.process.table == table &&
					    asked.process.line->jar == way.jar &&
					    request->canner == way.canner;
				if (!same && try_way(ref, request, &way))
					n = insert(request, out, n, max, way);
			}
		}
	}
	return n;
}
