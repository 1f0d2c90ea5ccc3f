-- Recipes as their owner typed them. The ingredient lines are read from the text whenever they
-- are needed: kept beside it they could differ from it.

CREATE TABLE recipe (
    id     INTEGER PRIMARY KEY,
    -- The cook's own name for it: 'plum chutney'. 127 bytes as in recipe.h.
    name   TEXT NOT NULL COLLATE NOCASE UNIQUE
           CHECK (length(CAST(name AS BLOB)) BETWEEN 1 AND 127),
    -- Whose cups, pints and spoons the text means; never assumed.
    system TEXT NOT NULL
           CHECK (system IN ('us', 'imperial', 'canada', 'australia', 'new-zealand', 'metric')),
    -- The whole text: ingredients, headings, remarks, method.
    source TEXT NOT NULL CHECK (length(CAST(source AS BLOB)) BETWEEN 1 AND 1048576)
) STRICT;
