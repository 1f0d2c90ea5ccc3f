$ printf '1 1/2 cups sugar\n' | jarwright recipe parse -
{"line":1,"quantity":"3/2","quantity_max":null,"unit":"cup","ingredient":"sugar","matched":"sugar, white granulated","preparation":"","note":"","sure":"certain","size":"","plus":null,"pack":null,"alternative":null,"optional":false,"to_taste":false}

# Headings, remarks and blank lines count, and are passed over; the method ends the list.
$ printf 'Ingredients:\r\n\r\n# ours\r\n2 x 400g tins tomatoes\r\n\r\nMethod:\r\nBoil 1,5 hours\r\n' | jarwright recipe parse -
{"line":4,"quantity":"2","quantity_max":null,"unit":"can","ingredient":"tomatoes","matched":"tomato","preparation":"","note":"","sure":"certain","size":"","plus":null,"pack":{"quantity":"400","quantity_max":null,"unit":"g"},"alternative":null,"optional":false,"to_taste":false}

$ printf '1 cup sugar\n1,5 kg plums\n0 g salt\n' | jarwright recipe parse -
! jarwright: recipe parse: line 2: '1,5 kg plums' has a comma in a number, which may mark decimals or thousands; write a point for decimals (1.5) and nothing for thousands (1500); lines refused besides it: 1
= 2

$ printf '1 cup sugar\n-1 cup salt\n' | jarwright recipe parse -
! jarwright: recipe parse: line 2: '-1 cup salt': the amount is negative; write it without the '-'
= 2

$ printf '1 cup \377sugar\n' | jarwright recipe parse -
! jarwright: recipe parse: line 1: '1 cup ?sugar': byte 7 is not UTF-8; save the list as UTF-8 text
= 2

$ printf '1 cup\0sugar\n' | jarwright recipe parse -
! jarwright: recipe parse: line 1: '1 cup': byte 6 is NUL; save the list as plain text
= 2

$ (echo 1 g salt; tr '\0' a < /dev/zero | head -c 5000000) | jarwright recipe parse -
! jarwright: recipe parse: line 2: it has more than 400 bytes; break it up
= 2

$ yes '1 g salt' | head -n 10000 | jarwright recipe parse - | wc -l
10000

$ yes '1 g salt' | jarwright recipe parse -
! jarwright: recipe parse: line 10001: there are more than 10000 lines; give them in parts
= 2

$ jarwright recipe parse - < /dev/null
! jarwright: recipe parse: there is no ingredient line; give one a line on standard input
= 2
