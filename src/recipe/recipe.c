#include "jarwright/recipe.h"

#include <stdlib.h>

void recipe_release(struct recipe *recipe)
{
	free(recipe->lines);
	free(recipe->method);
	*recipe = (struct recipe){0};
}
