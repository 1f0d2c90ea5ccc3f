// Looks at every page in a browser, as a cook, a printer, a screen reader and a phone's camera do:
//
//	node check.mjs PAGES TOOLS
//
// PAGES holds *.html, and for a page of labels NAME.codes, the codes its QR codes must give back.
// TOOLS holds the npm packages. At last a page that is broken on purpose must fail each check.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, readdirSync, rmSync, existsSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';

const [pages, tools] = process.argv.slice(2).map((path) => resolve(path));
const require = createRequire(tools + '/');
const { chromium } = require('playwright-core');
const { HtmlValidate } = require('html-validate');
const axe = readFileSync(require.resolve('axe-core/axe.min.js'), 'utf8');

// Pages of paper; undefined: as many as it takes, none of them empty.
const PAPERS = ['A4', 'Letter'];
const PAPER_PAGES = {
	'boil.html': 1, 'boil-anywhere.html': 1, 'sheet.html': 1, 'sheet-pressure.html': 1,
	'sheet-untested.html': 1, 'report.html': 3, 'report-empty.html': 1, 'labels-a4.html': 2,
	'labels-letter.html': 1, 'labels-small.html': 1, 'labels-hostile.html': 1, 'strips.html': 1,
	'strips-hostile.html': 1, 'table-carrots.html': 2, 'table-apple-jelly-without-pectin.html': 1,
	'table-pickled-beets.html': 1, 'sheet-made-batch.html': 1, 'sheet-made-cold.html': 1,
	'sheet-made-plan.html': 1, 'sheet-made-pressure.html': 1, 'sheet-made-acid.html': 1,
	'sheet-made-refused.html': 1, 'sheet-made-unclear.html': 1, 'sheet-made-recipe.html': 1,
	'report-made-empty.html': 1, 'labels-made-70x37mm.html': 1, 'strips-made.html': 1,
};
// In CSS pixels: a phone, a narrow window, a desk. Labels are as wide as their paper.
const SCREENS = [390, 820, 1280];

const validator = new HtmlValidate({
	root: true,
	extends: ['html-validate:recommended', 'html-validate:document'],
	rules: {
		'long-title': 'off', // a cook's own title is as long as it is
		'no-inline-style': 'error',
		'void-style': ['error', { style: 'omit' }],
	},
});

let passed = 0, failed = 0;
function report(page, check, faults) {
	if (faults.length === 0) {
		passed++;
		return;
	}
	failed++;
	console.log(`FAILED ${page}: ${check}`);
	for (const fault of faults.slice(0, 8)) console.log(`    ${fault}`);
}

async function valid(html) {
	const result = await validator.validateString(html);
	return result.results.flatMap((r) => r.messages).map((m) => `${m.line}: ${m.message} (${m.ruleId})`);
}

async function accessible(page) {
	await page.evaluate(axe);
	const result = await page.evaluate(() => globalThis.axe.run());
	return result.violations.map((v) => `${v.id}: ${v.help}: ${v.nodes[0].html.slice(0, 120)}`);
}

// Nothing from elsewhere, no script, and nothing of a text became an element.
function selfContained(html) {
	return ['<script', '<link', '<img', '<iframe', '<object', 'src=', 'href=', 'url(', '@import']
		.filter((word) => html.toLowerCase().includes(word)).map((word) => `it has ${word}`);
}

// Boxes whose content is wider than they are, labels' text outside the label, text outside the page.
function overflowing() {
	const faults = [];
	const root = document.documentElement;
	if (root.scrollWidth > root.clientWidth) faults.push(`page ${root.scrollWidth} > ${root.clientWidth}`);
	const name = (el) => `${el.tagName} ${el.className.baseVal ?? el.className} ${el.textContent.slice(0, 40)}`;
	for (const el of document.querySelectorAll('body *')) {
		if (el.closest('.unseen') || el.classList.contains('scroll')) continue;
		if (el.clientWidth > 0 && el.scrollWidth > el.clientWidth + 1)
			faults.push(`${name(el)}: ${el.scrollWidth} > ${el.clientWidth}`);
	}
	for (const label of document.querySelectorAll('.label')) {
		const box = label.getBoundingClientRect();
		for (const el of label.querySelectorAll('p, span, b, svg')) {
			const range = document.createRange();
			range.selectNodeContents(el);
			const inside = el.tagName === 'svg' ? el.getBoundingClientRect() : range.getBoundingClientRect();
			if (inside.left < box.left - 1 || inside.right > box.right + 1 ||
				inside.top < box.top - 1 || inside.bottom > box.bottom + 1)
				faults.push(`outside its label: ${name(el)}`);
		}
		const parts = [...label.querySelectorAll('p')].map((p) => p.getBoundingClientRect());
		for (let i = 1; i < parts.length; i++)
			if (parts[i].top < parts[i - 1].bottom - 1) faults.push(`overlapping lines: ${name(label)}`);
	}
	return faults;
}

function pdfPages(pdf) {
	return (pdf.toString('latin1').match(/\/Type\s*\/Page\b/g) ?? []).length;
}

async function printed(page, name, html) {
	const faults = [];
	const paper = html.match(/@page\{size:/) ? ['its own'] : PAPERS;
	for (const format of paper) {
		const pdf = await page.pdf({ format: format === 'its own' ? 'A4' : format, preferCSSPageSize: true });
		const n = pdfPages(pdf), wanted = PAPER_PAGES[name];
		if (n < 1 || (wanted !== undefined && n !== wanted)) faults.push(`${format}: ${n} pages, not ${wanted}`);
	}
	return faults;
}

// A picture of each code at about 200 dots an inch, read as a phone would.
async function codesOf(page, folder, name) {
	const files = [];
	for (const [i, code] of (await page.locator('svg.qr').all()).entries()) {
		const file = join(folder, `${name}-${i}.png`);
		await code.screenshot({ path: file });
		files.push(file);
	}
	if (files.length === 0) return [];
	try {
		return execFileSync('zbarimg', ['--nodbus', '--raw', '-q', ...files], { encoding: 'utf8', stdio: 'pipe' }).trim().split('\n');
	} catch (error) { // some were not read: what was is on its output
		return String(error.stdout).trim().split('\n');
	}
}

async function codesRead(page, list, folder, name) {
	const wanted = readFileSync(list, 'utf8').trim().split('\n');
	const read = await codesOf(page, folder, name);
	const faults = wanted.filter((code, i) => read[i] !== code).map((code) => `${code} is not read`);
	if (read.length !== wanted.length) faults.push(`${read.length} codes are read, not ${wanted.length}`);
	return faults;
}

// Where each code lies on its printed sheet, in inches, with half its quiet zone again around it.
function placesOnPaper() {
	const sheets = [...document.querySelectorAll('.sheet')];
	return [...document.querySelectorAll('.sheet svg.qr')].map((code) => {
		const sheet = code.closest('.sheet'), box = code.getBoundingClientRect(), page = sheet.getBoundingClientRect();
		return { sheet: sheets.indexOf(sheet) + 1, x: (box.left - page.left) / 96, y: (box.top - page.top) / 96, side: box.width / 96 };
	});
}

// The codes of the printed sheets, as a phone sees them at 300 dots an inch, one after the other.
async function codesPrinted(page, list, folder, name) {
	const wanted = readFileSync(list, 'utf8').trim().split('\n');
	const pdf = join(folder, `${name}.pdf`);
	await page.pdf({ path: pdf, format: 'A4', preferCSSPageSize: true });
	await page.emulateMedia({ media: 'print' });
	const places = await page.evaluate(placesOnPaper);
	await page.emulateMedia({ media: null });
	const faults = places.length === wanted.length ? [] : [`${places.length} codes on paper, not ${wanted.length}`];
	places.forEach((place, i) => {
		const dots = (inches) => String(Math.max(0, Math.round(inches * 300)));
		const out = join(folder, `${name}-paper-${i}`);
		execFileSync('pdftoppm', ['-r', '300', '-gray', '-png', '-singlefile', '-f', String(place.sheet),
			'-l', String(place.sheet), '-x', dots(place.x - 0.02), '-y', dots(place.y - 0.02),
			'-W', dots(place.side + 0.04), '-H', dots(place.side + 0.04), pdf, out], { stdio: 'pipe' });
		let read = '';
		try {
			read = execFileSync('zbarimg', ['--nodbus', '--raw', '-q', `${out}.png`], { encoding: 'utf8', stdio: 'pipe' }).trim();
		} catch { /* none was read */ }
		if (read !== wanted[i]) faults.push(`${wanted[i]} is not read from paper`);
	});
	return faults;
}

async function overflows(page, isLabels) {
	const faults = [];
	for (const width of isLabels ? [1280] : SCREENS) {
		await page.setViewportSize({ width, height: 900 });
		faults.push(...(await page.evaluate(overflowing)).map((f) => `screen ${width}: ${f}`));
	}
	// The paper's width within our margins: A4 and Letter, at 96 pixels an inch.
	await page.emulateMedia({ media: 'print' });
	for (const width of isLabels ? [1280] : [686, 708]) {
		await page.setViewportSize({ width, height: 900 });
		faults.push(...(await page.evaluate(overflowing)).map((f) => `paper ${width}: ${f}`));
	}
	await page.emulateMedia({ media: null }); // else it is printed as it is on the screen
	return faults;
}

async function look(context, name, folder) {
	const html = readFileSync(join(pages, name), 'utf8');
	const page = await context.newPage();
	const asked = [];
	page.on('request', (request) => asked.push(request.url()));
	await page.goto('file://' + join(pages, name));
	report(name, 'valid HTML', await valid(html));
	report(name, 'accessible', await accessible(page));
	report(name, 'self-contained', [...selfContained(stripTexts(html)), ...asked.slice(1)]);
	report(name, 'nothing overflows', await overflows(page, /^(labels|strips)/.test(name)));
	report(name, 'pages of paper', await printed(page, name, html));
	const list = join(pages, name.replace('.html', '.codes'));
	if (existsSync(list)) {
		report(name, 'QR codes', await codesRead(page, list, folder, name));
		if (name.startsWith('labels')) report(name, 'QR codes on paper', await codesPrinted(page, list, folder, name));
	}
	await page.screenshot({ path: join(pages, name.replace('.html', '.png')), fullPage: true });
	await page.close();
}

// The markup alone: texts and the values of attributes that are texts may say what they like.
function stripTexts(html) {
	const style = html.match(/<style>[^]*?<\/style>/)?.[0] ?? '';
	return style + (html.replace(style, '').match(/<[^>]*>/g) ?? []).join('\n').replace(/aria-label="[^"]*"/g, '');
}

// Each check must be able to fail: on this page every one of them does.
async function checkTheChecks(context, folder) {
	const name = 'broken-on-purpose.html';
	const html = readFileSync(join(pages, 'labels-a4.html'), 'utf8')
		.replace('<html lang="en">', '<html>')
		.replace('white-space:nowrap;margin-top:auto', 'white-space:nowrap;margin-top:50mm')
		.replace('<h1 class="unseen">', '<img src="x.png"><h1 class="unseen">')
		.replace('break-before:page', 'break-before:page;margin-top:400mm');
	writeFileSync(join(folder, name), html.replace(/<path d="[^"]*"/, '<path d="M0 0h9v9z"'));
	const page = await context.newPage();
	await page.goto('file://' + join(folder, name));
	const must = (check, faults) => report(name, `${check} finds no fault`, faults.length ? [] : ['it must']);
	must('valid HTML', await valid(html));
	must('accessible', await accessible(page));
	must('self-contained', selfContained(stripTexts(html)));
	must('nothing overflows', await overflows(page, true));
	must('pages of paper', await printed(page, 'labels-a4.html', html));
	must('QR codes on paper', await codesPrinted(page, join(pages, 'labels-a4.codes'), folder, name));
	must('QR codes', await codesRead(page, join(pages, 'labels-a4.codes'), folder, name));
	await page.close();
}

const folder = mkdtempSync(join(tmpdir(), 'jarwright-pages-'));
const browser = await chromium.launch({
	executablePath: '/usr/bin/chromium',
	args: ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking',
		'--disable-component-update', '--disable-sync'],
});
try {
	const context = await browser.newContext({ deviceScaleFactor: 2 });
	const names = readdirSync(pages).filter((file) => file.endsWith('.html')).sort();
	const lookOn = async () => {
		for (let name = names.shift(); name; name = names.shift()) await look(context, name, folder);
	};
	await Promise.all([lookOn(), lookOn()]);
	await checkTheChecks(context, folder);
} finally {
	await browser.close();
	rmSync(folder, { recursive: true });
}
console.log(`${passed} passed, ${failed} failed`);
process.exit(failed === 0 ? 0 : 1);
