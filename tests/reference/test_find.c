/* What words come to. The expectations follow db/synonyms.txt and the foods' titles. */
#include <string.h>

#include "jarwright/reference.h"
#include "jarwright/spelling.h"
#include "jarwright/words.h"
#include "suite.h"

static struct food_match find(const char *words)
{
	struct food_match match;
	reference_find_food(reference_edition(), words, &match);
	return match;
}

static bool has(const struct food_match *match, const char *slug)
{
	for (size_t i = 0; i < match->foods_n; i++)
		if (strcmp(match->foods[i]->slug, slug) == 0)
			return true;
	return false;
}

static void assert_one(const char *words, const char *slug)
{
	struct food_match match = find(words);
	ck_assert_msg(match.kind == MATCH_ONE, "%s: kind %d", words, (int)match.kind);
	ck_assert_str_eq(match.foods[0]->slug, slug);
}

START_TEST(every_slug_and_title_finds_its_food)
{
	const struct reference *ref = reference_edition();
	ck_assert_uint_gt(ref->foods_n, 100);
	for (size_t i = 0; i < ref->foods_n; i++) {
		assert_one(ref->foods[i].slug, ref->foods[i].slug);
		assert_one(ref->foods[i].title, ref->foods[i].slug);
		ck_assert_ptr_eq(reference_food(ref, ref->foods[i].slug), &ref->foods[i]);
	}
	ck_assert_ptr_null(reference_food(ref, "no-such-food"));
	ck_assert_ptr_null(reference_food(ref, ""));
}
END_TEST

START_TEST(every_synonym_finds_its_food)
{
	const struct reference *ref = reference_edition();
	ck_assert_uint_gt(ref->synonyms_n, 1000);
	for (size_t i = 0; i < ref->synonyms_n; i++) {
		const char *word = ref->synonyms[i].word;
		struct food_match match = find(word);
		/* A slug, a title and a barred word go first. */
		if (match.kind == MATCH_BARRED || (match.kind == MATCH_ONE && !match.by_synonym))
			continue;
		ck_assert_msg(has(&match, ref->synonyms[i].food->slug), "%s", word);
	}
}
END_TEST

START_TEST(case_hyphens_plurals_and_blanks_do_not_matter)
{
	assert_one("Pickled Beets", "pickled-beets");
	assert_one("  pickled   beet ", "pickled-beets");
	assert_one("PICKLED-BEETS", "pickled-beets");
	assert_one("pickled beets,", "pickled-beets");
	assert_one("pickled jalapeno pepper rings", "pickled-jalapeno-rings");
	assert_one("bread & butter pickle", "bread-and-butter-pickles");
}
END_TEST

START_TEST(several_meanings_are_asked)
{
	struct food_match singular = find("green bean"), plural = find("Green beans");
	ck_assert_int_eq(singular.kind, MATCH_SEVERAL);
	ck_assert_uint_eq(singular.foods_n, plural.foods_n);
	ck_assert(has(&plural, "snap-beans") && has(&plural, "pickled-dilled-beans"));
}
END_TEST

START_TEST(a_kind_is_asked_with_all_its_foods)
{
	const struct reference *ref = reference_edition();
	static const char *const kinds[] = {"chutney", "jams", "pickle", "Soup", "pie filling"};
	static const char *const names[] = {"chutney", "jam", "pickle", "soup", "pie-filling"};
	for (size_t k = 0; k < sizeof kinds / sizeof *kinds; k++) {
		struct food_match match = find(kinds[k]);
		ck_assert_int_eq(match.kind, MATCH_SEVERAL);
		ck_assert(!match.by_synonym);
		for (size_t i = 0; i < ref->foods_n; i++)
			if (strcmp(ref->foods[i].kind, names[k]) == 0)
				ck_assert(has(&match, ref->foods[i].slug));
	}
}
END_TEST

START_TEST(words_of_a_title_ask_even_for_one)
{
	struct food_match match = find("tomatillo tangy");
	ck_assert_int_eq(match.kind, MATCH_SEVERAL);
	ck_assert_uint_eq(match.foods_n, 1);
	ck_assert(has(&match, "tangy-tomatillo-relish"));
}
END_TEST

START_TEST(a_slip_is_suggested_never_taken)
{
	struct food_match match = find("pickled beats");
	ck_assert_int_eq(match.kind, MATCH_NONE);
	ck_assert(has(&match, "pickled-beets"));
	ck_assert_uint_le(match.foods_n, 6);
}
END_TEST

static size_t smaller(size_t a, size_t b)
{
	return a < b ? a : b;
}

/* From typed, which is folded, to the nearest name of the food. */
static size_t distance(const struct food *food, const char *typed)
{
	const struct reference *ref = reference_edition();
	char folded[WORDS_SIZE];
	ck_assert(words_fold(food->slug, strlen(food->slug), folded));
	size_t nearest = spelling_distance(folded, typed);
	ck_assert(words_fold(food->title, strlen(food->title), folded));
	for (char *word = strtok(folded, " "); word; word = strtok(NULL, " "))
		nearest = smaller(nearest, spelling_distance(word, typed));
	for (size_t i = 0; i < ref->synonyms_n; i++) {
		const char *word = ref->synonyms[i].word;
		if (ref->synonyms[i].food == food && words_fold(word, strlen(word), folded))
			nearest = smaller(nearest, spelling_distance(folded, typed));
	}
	return nearest;
}

START_TEST(the_nearest_is_suggested_first)
{
	static const char *const slips[] = {"aple", "peeches", "beats", "tomattoe", "relich"};
	for (size_t s = 0; s < sizeof slips / sizeof *slips; s++) {
		struct food_match match = find(slips[s]);
		char typed[WORDS_SIZE];
		size_t before = 0;
		ck_assert(words_fold(slips[s], strlen(slips[s]), typed));
		ck_assert_int_eq(match.kind, MATCH_NONE);
		ck_assert_uint_gt(match.foods_n, 0);
		for (size_t i = 0; i < match.foods_n; i++) {
			size_t apart = distance(match.foods[i], typed);
			ck_assert_msg(apart >= before && apart <= 2, "%s: %s", slips[s],
				      match.foods[i]->slug);
			before = apart;
			for (size_t j = 0; j < i; j++)
				ck_assert_ptr_ne(match.foods[i], match.foods[j]);
		}
	}
}
END_TEST

START_TEST(a_table_that_is_not_published_is_not_there)
{
	/* AIB 539 (2015) guide 4, p. 4-5: asparagus, a low-acid food, only under pressure. */
	const struct food *food = reference_food(reference_edition(), "asparagus");
	ck_assert_ptr_nonnull(reference_table(food, CANNER_DIAL_GAUGE, PACK_RAW));
	ck_assert_ptr_null(reference_table(food, CANNER_BOILING_WATER, PACK_RAW));
	ck_assert_ptr_null(reference_table(food, CANNER_STEAM, PACK_RAW));
}
END_TEST

START_TEST(nonsense_finds_nothing)
{
	static const char *const words[] = {"", " ", "-", "''", "|", "qqqqqqqq", "\xff\xfe", "a|b"};
	for (size_t i = 0; i < sizeof words / sizeof *words; i++) {
		struct food_match match = find(words[i]);
		ck_assert_msg(match.kind == MATCH_NONE, "%s", words[i]);
		ck_assert_ptr_null(match.barred);
	}
	static char huge[100000];
	memset(huge, 'a', sizeof huge - 1);
	struct food_match match = find(huge);
	ck_assert_int_eq(match.kind, MATCH_NONE);
	ck_assert_uint_eq(match.foods_n, 0);
}
END_TEST

START_TEST(every_barred_word_is_known)
{
	const struct reference *ref = reference_edition();
	ck_assert_uint_gt(ref->barred_n, 10);
	for (size_t i = 0; i < ref->barred_n; i++) {
		const struct barred *barred = &ref->barred[i];
		const struct barred *found =
		    reference_find_barred(ref, barred->facet, barred->slug);
		ck_assert_msg(found == barred, "%s", barred->slug);
	}
	ck_assert_ptr_nonnull(reference_find_barred(ref, FACET_METHOD, "OVEN"));
	ck_assert_ptr_null(reference_find_barred(ref, FACET_FOOD, "oven"));
	ck_assert_ptr_null(reference_find_barred(ref, FACET_METHOD, ""));
}
END_TEST

START_TEST(a_harvest_means_all_its_foods)
{
	struct food_match match;
	reference_find_harvest(reference_edition(), "beets", &match);
	ck_assert_int_eq(match.kind, MATCH_SEVERAL);
	ck_assert(has(&match, "beets") && has(&match, "pickled-beets"));
	/* AIB 539 (2015) guide 1, p. 1-31: no process for mashed potatoes. */
	reference_find_harvest(reference_edition(), "mashed potatoes", &match);
	ck_assert_int_eq(match.kind, MATCH_BARRED);
	ck_assert_str_eq(match.barred->slug, "mashed-potatoes");
	ck_assert_uint_eq(match.foods_n, 0);
	reference_find_harvest(reference_edition(), "beats", &match);
	ck_assert_int_eq(match.kind, MATCH_NONE);
	ck_assert(has(&match, "beets"));
	reference_find_harvest(reference_edition(), "--", &match);
	ck_assert_int_eq(match.kind, MATCH_NONE);
	ck_assert_uint_eq(match.foods_n, 0);
}
END_TEST

START_TEST(folding)
{
	static const char *const pairs[][2] = {{"Tomatoes", "tomato"},
					       {"cherries", "cherry"},
					       {"peaches", "peach"},
					       {"jalapeños", "jalapeno"},
					       {"glass", "glass"},
					       {"lady's fingers", "lady finger"},
					       {"bread & butter", "bread and butter"},
					       {" a  -b ", "a b"}};
	for (size_t i = 0; i < sizeof pairs / sizeof *pairs; i++) {
		char folded[WORDS_SIZE] = "";
		ck_assert(words_fold(pairs[i][0], strlen(pairs[i][0]), folded));
		ck_assert_str_eq(folded, pairs[i][1]);
	}
	ck_assert(words_all_in("sweet green tomato", "tomato sweet"));
	ck_assert(!words_all_in("sweet green tomato", "tom"));
	ck_assert(words_listed("|oven|oven canning|", "oven canning"));
	ck_assert(!words_listed("|oven|oven canning|", "canning"));
	ck_assert(!words_fold_to("", 0, "oven"));
	ck_assert(!words_same("oven", ""));
}
END_TEST

static Suite *find_suite(void)
{
	Suite *suite = suite_create("reference");
	TCase *tests = tcase_create("find");
	tcase_add_test(tests, every_slug_and_title_finds_its_food);
	tcase_add_test(tests, every_synonym_finds_its_food);
	tcase_add_test(tests, case_hyphens_plurals_and_blanks_do_not_matter);
	tcase_add_test(tests, several_meanings_are_asked);
	tcase_add_test(tests, a_kind_is_asked_with_all_its_foods);
	tcase_add_test(tests, words_of_a_title_ask_even_for_one);
	tcase_add_test(tests, a_slip_is_suggested_never_taken);
	tcase_add_test(tests, the_nearest_is_suggested_first);
	tcase_add_test(tests, a_table_that_is_not_published_is_not_there);
	tcase_add_test(tests, nonsense_finds_nothing);
	tcase_add_test(tests, every_barred_word_is_known);
	tcase_add_test(tests, a_harvest_means_all_its_foods);
	tcase_add_test(tests, folding);
	suite_add_tcase(suite, tests);
	return suite;
}

SUITE_MAIN(find_suite())
