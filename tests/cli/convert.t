# Sources: Weights and Measures Act 1985 (imperial pint 568.26125 mL), NIST Handbook 44 (US cup).
$ jarwright convert "5/8 pint" --from imperial --to us | head -n 3
5/8 pint (imperial)
Volume: 1 1/2 cups (us)
  exactly 355.16328125 mL; 1 1/2 cups comes to 354.88235475 mL, 0.08 % less

# Whose cup?
$ jarwright convert "2 1/4 cups" --of "brown sugar, packed" --to metric
UNCLEAR  whose cup?
  --from us: one is 236.5882365 mL, all of it 532.3 mL [nist-hb44 measuring cup
  8 fluid ounces exactly (prints 237 mL); computed]
  --from imperial: one is 284.130625 mL, all of it 639.3 mL [gnu-units 1/2
  imperial pint; no UK legal cup found]
...
  The largest holds 20 % more than the smallest. Look where the recipe comes
  from, and say --from.
...
= 5

$ jarwright convert 1 pint --to us --json
{"verdict":"unclear","asks":"from","unit":"pint","measures":[{"unit":"pint","system":"us","table":"US customary (liquid)","amount":"473176473/1000000","of":"mL","by_definition":true,"source":"National Institute of Standards and Technology, Special Publication 430, Household Weights and Measures, date not stated, nist-hb44 for the gallon; computed"},{"unit":"pint","system":"imperial","table":"Imperial (UK)","amount":"454609/800","of":"mL","by_definition":true,"source":"United Kingdom, Weights and Measures Act 1985, schedule 1, 1985, as quoted, Sch. 1 Part IV (4.54609 litres) as quoted; Part IV itself not shown"},{"unit":"pint","system":"canada","table":"Canadian","amount":"454609/800","of":"mL","by_definition":true,"source":"Canada, Weights and Measures Act, R.S.C. 1985, c. W-6, schedule II, R.S.C. 1985, 1/8 gallon"}]}
= 5

# Source: USDA Standard Reference 28, NDB 19334, 1 cup packed = 220 g.
$ jarwright convert "2 1/4 cups" --from us --of "brown sugar, packed" --to metric | grep -v '^$' | head -n 9
2 1/4 cups (us) of brown sugar, packed
Weight: 495 g (metric)
  exactly 495 g, nothing rounded
Volume: 530 mL (metric)
  exactly 532.323532125 mL; 530 mL is 0.44 % less
  one cup of sugar, brown (dry; packed): 220 g [sr28 NDB 19334 Sugars, brown; 1
  cup packed = 220 g]
  one cup (US customary): 236.5882365 mL [nist-hb44 measuring cup 8 fluid ounces
  exactly (prints 237 mL); computed]

# Source: USDA Standard Reference 28, NDB 11282, 1 medium = 110 g.
$ jarwright convert 1 medium --of onion --to metric | head -n 3
1 medium onion
Weight: 110 g (metric)
  exactly 110 g, nothing rounded

# Several foods: a range, and the question which. NDB 02053, 02048, 02068, 02069.
$ jarwright convert "1 us cup" --of vinegar --to metric | grep -e Weight -e Several
Weight: 238 g to 255 g (metric)
careful Several foods go by these words; name yours for a narrower answer.

# Grams back to cups. Source: NDB 19335, 1 cup = 200 g.
$ jarwright convert 500 g --of "white sugar" --to us | grep Volume
Volume: 2 1/2 cups (us)

$ jarwright convert 2 cloves --of garlic --to us --json | grep -o '"practical":"[^"]*"' | head -n 1
"practical":"1/4 oz"

# A measure that is far off is warned of.
$ jarwright convert 2 cloves --of garlic --to us | grep careful
  careful No such measure comes near: take metric measures, or weigh it.

# The kitchen's own units.
$ jarwright convert 1 lb
! jarwright: convert: your measures are not known; say --to us or --to metric, or keep them with 'jarwright kitchen --units'
= 2

$ jarwright kitchen --units metric >/dev/null; jarwright convert 1 lb | head -n 2
1 lb
Weight: 454 g (metric)

$ jarwright convert
! jarwright: convert: no QUANTITY given; type 'jarwright convert QUANTITY [--from SYSTEM] [--to SYSTEM] [--of INGREDIENT]'
= 2

$ jarwright convert "1,5 cups" --from us
! jarwright: convert: '1,5' has a comma; write it without the comma, 1500 for thousands, 1.5 for decimals
= 2

$ jarwright convert "1 pint" --from australia
! jarwright: from: no Australian pint is published in the tables; say whose it is, or give the amount in mL or g
= 2

$ jarwright convert "1 imperial pint" --from us
! jarwright: from: the quantity says imperial and --from says us; say one of them
= 2

$ jarwright convert "1 cup" --from mars
! jarwright: from: there are no measures of 'mars'; say us, imperial, canada, australia, new-zealand or metric
= 2

$ jarwright convert 1 furlong
! jarwright: convert: there is no measure called 'furlong'; write cups, tbsp, tsp, pints, fl oz, mL, lb, oz, g ..., or say of what it is a number with --of
= 2

$ jarwright convert 3
! jarwright: convert: '3' has no unit; write one, such as cups, or say of what it is a number with --of
= 2

$ jarwright convert "1 cup" --from us --of unicorn
! jarwright: of: nothing published says what such a measure of 'unicorn' weighs; name the ingredient and its form otherwise, or weigh it
= 2

$ jarwright convert "999999999999999 gallons" --from us
! jarwright: convert: the number cannot be converted exactly; write a smaller one, or one with fewer digits
= 2
