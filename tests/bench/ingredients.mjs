// The labelled ingredient lines through this program and, side by side, through the package
// parse-ingredient of the npm registry, by one rule for both.
//
//	node ingredients.mjs PROGRAM LINES.tsv PACKAGE_FOLDER
//
// A line is right if amount, end of range and unit are the label's, and every word of the labelled
// ingredient is among the words for the ingredient that came out. Preparation is not compared: the
// package leaves it in its description. Sizes count as no unit, and a dozen as twelve, for both;
// figures within 0.001, to which the package rounds. Lines that are to be refused are left out:
// the package has no refusals. Fails if ours is right less often.
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

const [program, path, folder] = process.argv.slice(2);
const { parseIngredient } = createRequire(folder + '/')('parse-ingredient');
const ROUNDS = 25; // the program takes at most 10,000 lines at once

const number = (text) => {
	if (text === null || text === '-') return null;
	const [num, den = '1'] = text.split('/');
	return Number(num) / Number(den);
};

const rows = readFileSync(path, 'utf8')
	.split('\n')
	.filter((row) => row && !row.startsWith('#'))
	.map((row) => row.split('\t'))
	.map(([style, line, quantity, max, unit, ingredient]) => ({ style, line, quantity, max, unit, ingredient }));
const labelled = rows.filter((row) => row.quantity !== 'refused');

const noUnit = new Set(['', '-', 'small', 'medium', 'large', 'fruit', 'dozen']);
const sameUnit = {
	teaspoon: 'tsp', tablespoon: 'tbsp', 'fluid ounce': 'fl oz', fluidounce: 'fl oz', milliliter: 'ml',
	deciliter: 'dl', liter: 'l', gram: 'g', kilogram: 'kg', milligram: 'mg', ounce: 'oz', pound: 'lb',
	pack: 'package', centimeter: 'cm',
};
const unitOf = (unit) => (unit === null || noUnit.has(unit) ? '' : (sameUnit[unit] ?? unit));

const words = (text) =>
	text.toLowerCase().normalize('NFD').replace(/[\u0300-\u036f]/g, '').split(/[^a-z0-9]+/)
		.filter(Boolean).map((word) => word.replace(/(?:(o)es|s)$/, '$1'));

const near = (a, b) => (a === null || b === null ? a === b : Math.abs(a - b) <= 0.001);

const right = (row, got) =>
	near(number(row.quantity), got.quantity) && near(number(row.max), got.max) &&
	unitOf(row.unit) === unitOf(got.unit) &&
	words(row.ingredient).every((word) => words(got.ingredient).includes(word));

const ours = (lines) => {
	const run = spawnSync(program, ['recipe', 'parse', '-'],
		{ input: lines.join('\n') + '\n', encoding: 'utf8', maxBuffer: 1 << 28 });
	if (run.status !== 0) throw new Error(`${program}: exit code ${run.status}: ${run.stderr}`);
	return run.stdout.trim().split('\n').map((text) => {
		const { quantity, quantity_max, unit, ingredient } = JSON.parse(text);
		return { quantity: number(quantity), max: number(quantity_max), unit, ingredient };
	});
};

const theirs = (lines) =>
	lines.map((line) => {
		const read = parseIngredient(line)[0];
		const times = read?.unitOfMeasureID === 'dozen' ? 12 : 1;
		const times12 = (n) => (n === null || n === undefined ? null : n * times);
		return {
			quantity: times12(read?.quantity), max: times12(read?.quantity2),
			unit: read?.unitOfMeasureID ?? '', ingredient: read?.description ?? '',
		};
	});

const lines = labelled.map((row) => row.line);
const many = Array.from({ length: ROUNDS }, () => lines).flat();

const measure = (name, read) => {
	const got = read(lines);
	if (got.length !== lines.length) throw new Error(`${name}: ${got.length} answers to ${lines.length} lines`);
	const wrong = labelled.filter((row, i) => !right(row, got[i]));
	const start = performance.now();
	read(many);
	const rate = many.length / ((performance.now() - start) / 1000);
	const count = lines.length - wrong.length;
	console.log(`${name}: right ${count} of ${lines.length} lines (${((100 * count) / lines.length).toFixed(1)} %), ` +
		`${Math.round(rate)} lines a second`);
	if (process.env.SHOW_WRONG)
		for (const row of wrong) console.log(`  ${row.line}: ${JSON.stringify(got[labelled.indexOf(row)])}`);
	return count;
};

console.log(`ingredient lines: ${lines.length} labelled, ${rows.length - lines.length} to be refused left out`);
const mine = measure('jarwright recipe parse', ours);
const other = measure('parse-ingredient', theirs);
if (mine < other) {
	console.error('ingredient lines: right less often than parse-ingredient');
	process.exitCode = 1;
}
