#include "jarwright/recipe.h"

/* The amounts of a line that grow with it. A pack does not: two tins become four, not larger. */
static bool scale_amount(struct ingredient_amount *amount, struct rational factor)
{
	if (!amount->present)
		return true;
	return rational_mul(amount->quantity, factor, &amount->quantity) &&
	       rational_mul(amount->quantity_max, factor, &amount->quantity_max);
}

static bool scale_line(struct ingredient_line *line, struct rational factor)
{
	if (!line->has_quantity)
		return true;
	return rational_mul(line->quantity, factor, &line->quantity) &&
	       rational_mul(line->quantity_max, factor, &line->quantity_max) &&
	       scale_amount(&line->plus, factor) && scale_amount(&line->alternative, factor);
}

bool recipe_scale(struct recipe *recipe, struct rational factor, struct error *err)
{
	if (factor.num <= 0)
		return error_usage(err, "scale: the factor must be above 0; say 1/2 or 3");
	/* On copies first, so that a recipe is never scaled in part. */
	for (size_t i = 0; i < recipe->lines_n; i++) {
		struct ingredient_line copy = recipe->lines[i].read;
		if (!scale_line(&copy, factor))
			return error_usage(err,
					   "line %d: its amount times that factor does not fit; "
					   "say a simpler factor",
					   recipe->lines[i].number);
	}
	for (size_t i = 0; i < recipe->lines_n; i++)
		(void)scale_line(&recipe->lines[i].read, factor);
	return true;
}
