/* SHA-256 against the examples that NIST publishes with FIPS 180-4 ("SHA-256 Example Values" of the
 * Cryptographic Standards and Guidelines: one block "abc", two blocks), and the empty message and
 * the million letters a of its validation vectors (SHAVS, SHA256ShortMsg; FIPS 180-2, B.3). */
#include <stdlib.h>
#include <string.h>

#include "jarwright/digest.h"
#include "suites.h"

static struct error err;

static void digests_to(const struct bytes *parts, size_t n, const char *hex)
{
	uint8_t digest[DIGEST_SIZE];
	char text[2 * DIGEST_SIZE + 1];
	if (!digest_make(parts, n, digest, &err))
		ck_abort_msg("%s", err.text);
	hex_text(digest, DIGEST_SIZE, text);
	ck_assert_str_eq(text, hex);
}

START_TEST(published_values)
{
	static const char two[] = "abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq";
	const struct bytes abc = {"abc", 3}, blocks = {two, sizeof two - 1};
	digests_to(&abc, 1, "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
	digests_to(&blocks, 1, "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
	digests_to(NULL, 0, "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
}
END_TEST

START_TEST(a_million_letters)
{
	enum { LETTERS = 1000000 };
	char *letters = malloc(LETTERS);
	ck_assert_ptr_nonnull(letters);
	memset(letters, 'a', LETTERS);
	const struct bytes whole = {letters, LETTERS};
	const struct bytes parts[] = {
	    {letters, 1}, {letters, 63}, {letters, 0}, {letters, 999900}, {letters, 36}};
	static const char hex[] =
	    "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0";
	digests_to(&whole, 1, hex);
	digests_to(parts, 5, hex); /* how it is parted does not matter */
	free(letters);
}
END_TEST

START_TEST(hexadecimal_digits)
{
	static const char *const bad[] = {"",       "0",      "00ff1",  "00ff10a",
					  "00fg10", "00FF10", "00ff1 ", "0x00ff"};
	uint8_t bytes[3];
	char text[7];
	ck_assert(hex_parse("00ff10", bytes, 3));
	hex_text(bytes, 3, text);
	ck_assert_str_eq(text, "00ff10");
	for (size_t i = 0; i < sizeof bad / sizeof *bad; i++)
		if (hex_parse(bad[i], bytes, 3))
			ck_abort_msg("'%s' was taken for three bytes", bad[i]);
}
END_TEST

Suite *digest_suite(void)
{
	Suite *suite = suite_create("digest");
	TCase *tcase = tcase_create("digest");
	tcase_add_test(tcase, published_values);
	tcase_add_test(tcase, a_million_letters);
	tcase_add_test(tcase, hexadecimal_digits);
	suite_add_tcase(suite, tcase);
	return suite;
}
