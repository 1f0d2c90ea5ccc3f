# The jars of one recall in recalled-jars.csv.
cell("recall") == recall { printf "%s-%02d\n", cell("batch"), cell("number") }
