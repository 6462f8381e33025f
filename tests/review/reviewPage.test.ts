/** The page of a review, part by part: what each part says is by the comments and types of its sources. */
import type { Headline } from "../../src/review/amountInWords";
import type { Facts } from "../../src/review/facts";
import type { Finding, Weight } from "../../src/review/finding";
import { reviewPage, type PageFile } from "../../src/review/reviewPage";

/** Without the blanks that stand between marks of the markup. */
const tight = (page: string): string => page.replace(/\s+/g, " ").replace(/ ?(<[^>]+>) ?/g, "$1");
const pageOf = (...files: readonly PageFile[]): string => tight(reviewPage(files));
const finding = (message: string, weight: Weight = "wrong", more: Partial<Finding> = {}): Finding => ({
  weight,
  message,
  remedy: "Look.",
  ...more,
});
const file = (more: Partial<PageFile> = {}): PageFile => ({ path: "jobs/a.xlsx", findings: [], ...more });
const headline = (more: Partial<Headline> = {}): Headline => ({ unknown: 0, sentence: "Quoted.", ...more });
const facts = (more: Partial<Facts> = {}): Facts => ({ version: "9.9", passed: [], ...more });
const at = (cell: string) => ({ sheet: "Site", cell });

describe("of one workbook", () => {
  test("its name, what each weight asks for, and how many there are", () => {
    const page = pageOf(
      file({
        findings: [finding("A."), finding("B.", "doubtful"), finding("C."), finding("D.", "worth knowing")],
      }),
    );
    expect(page).toMatch(/^<!doctype html><html lang="en"><head>/);
    expect(page).toContain("<title>Review of a.xlsx</title>");
    expect(page).toContain("<h1>Review of a workbook</h1>");
    expect(page).toContain(
      "<ul><li><b>2 wrong</b>: cannot stand; put right before it goes out</li>" +
        "<li><b>1 doubtful</b>: look before it goes out</li>" +
        "<li><b>1 worth knowing</b>: may stay as it is</li></ul>",
    );
    expect(page).toContain("<style>body{");
    expect(page).toContain('<h2 id="file-1">a.xlsx</h2>');
    for (const ofMany of ["<table>", "All workbooks", "What was looked for", "unreadable"])
      expect(page).not.toContain(ofMany);
  });

  test("a path of Windows is named by its file too, and a link leads to it", () => {
    const page = pageOf(file({ path: "C:\\jobs\\b.xlsx", link: "jobs/b.xlsx" }));
    expect(page).toContain('<h2 id="file-1"><a href="jobs/b.xlsx">b.xlsx</a></h2>');
  });

  test("nothing found: the headline is left out, for there is nothing to say of it", () => {
    const page = pageOf(file({ headline: headline() }));
    expect(page).toContain("<p>Nothing found.</p>");
    expect(page).not.toContain("Quoted.");
    expect(page).not.toContain("<ol>");
  });

  test("a finding with all that is known of it", () => {
    const mend = (cell: string) => ({ place: at(cell), what: `Run ${cell}`, does: "a shorter run" });
    const page = pageOf(
      file({
        headline: headline(),
        findings: [
          finding("Too long.", "wrong", {
            place: at("B2"),
            expected: "5 m.",
            effect: "It costs.",
            leadsTo: [finding("An error.", "wrong", { place: at("C9") }), finding("A check.")],
            mends: ["D1", "D2", "D3", "D4"].map(mend),
          }),
          finding("Bare.", "doubtful"),
        ],
      }),
    );
    expect(page).toContain(
      '<p class="headline">Quoted.</p><ol>' +
        '<li><span class="weight">wrong</span><span class="at">Sheet Site, cell B2:</span>Too long.<dl>' +
        "<dt>Should be</dt><dd>5 m.</dd><dt>Effect</dt><dd>It costs.</dd>" +
        "<dt>Because of it</dt><dd>Site!C9: An error.</dd><dd>A check.</dd>" +
        "<dt>What to do</dt><dd>Look.</dd>" +
        "<dt>Any of these</dt>" +
        ["D1", "D2", "D3"]
          .map((cell) => `<dd>Sheet Site, cell ${cell}, Run ${cell}: a shorter run.</dd>`)
          .join("") +
        "</dl></li>" +
        '<li><span class="weight">doubtful</span><span class="at">The whole workbook:</span>Bare.<dl>' +
        "<dt>What to do</dt><dd>Look.</dd></dl></li></ol>",
    );
    expect(page).not.toContain("Nothing found.");
  });

  test("the facts that are known, and no others", () => {
    const known = {
      findings: [finding("A.")],
      fingerprint: "0123456789abcdef0123",
      facts: facts({
        job: "Q-7 Harbour House",
        template: "multi-room, version 5",
        printed: 1234.5,
        computed: 0,
        currency: "EUR",
        checks: { all: 9, ok: 7 },
        passed: ["stale value", "unit slip"],
        notLooked: [{ rule: "unlike standards", what: "the firm's standards" }],
        leftOut: 3,
      }),
      kept: {
        id: "j",
        earlier: { at: "2026-10-01T08:00:00Z", file: "old.xlsx", version: "1" },
        now: [{ key: 1, state: "back" as const, since: "2026-10-01T08:00:00Z" }],
        gone: [],
      },
    };
    const page = pageOf(file(known));
    expect(page).toContain(
      "<dl><dt>Job</dt><dd>Q-7 Harbour House</dd><dt>File</dt><dd>jobs/a.xlsx</dd>" +
        "<dt>Fingerprint</dt><dd>SHA-256 0123456789abcdef…</dd>" +
        "<dt>Reviewed before</dt><dd>2026-10-01, old.xlsx</dd>" +
        "<dt>Made with</dt><dd>multi-room, version 5</dd><dt>Reviewed by</dt><dd>Rigsheet 9.9</dd>" +
        "<dt>Total as the file shows it</dt><dd>1,234.50 EUR</dd>" +
        "<dt>Total as its inputs come to</dt><dd>0.00 EUR</dd></dl>" +
        "<p>The job is large: what 3 findings, the least in money, do to outlets and volts was not computed.</p>",
    );
    expect(page).toContain('<span class="weight">wrong</span><b>back again</b><span class="at">');
    expect(page).toContain(
      '<p class="small">7 of the workbook&#39;s 9 checks are ok. Looked for and not found: stale value, unit slip. ' +
        "Not looked for: unlike standards (without the firm&#39;s standards).</p></section>",
    );
    const bare = pageOf(file());
    expect(bare).toContain("<dl><dt>File</dt><dd>jobs/a.xlsx</dd></dl><p>Nothing found.</p></section>");
    expect(pageOf(file({ facts: facts({ passed: ["a"] }) }))).toContain(
      '<p>Nothing found.</p><p class="small">Looked for and not found: a.</p>',
    );
    // Without a currency the sum stands alone.
    expect(pageOf(file({ facts: facts({ printed: 5 }) }))).toContain("<dd>5.00</dd>");
  });

  test("what is settled counts nowhere and stands with its reason; what is gone stands with its place", () => {
    const since = "2026-10-01T08:00:00Z";
    const settled = { reason: "agreed <by phone>", at: "2026-10-03T08:00:00Z", held: 5 };
    const page = pageOf(
      file({
        findings: [finding("Open."), finding("Agreed.", "wrong", { place: at("B3") })],
        kept: {
          id: "j",
          now: [
            { key: 1, state: "new", since },
            { key: 2, state: "settled", since, settled },
          ],
          gone: [
            {
              key: 3,
              since,
              rules: ["a"],
              weight: "wrong",
              place: at("B9"),
              subject: "s",
              held: 1,
              message: "Was there.",
            },
          ],
        },
      }),
    );
    expect(page).toContain("<b>1 wrong</b>");
    expect(page).toContain(
      "</ol><p><b>Settled (1)</b>, and left out of all counts:</p><ul>" +
        '<li><span class="at">Sheet Site, cell B3:</span>Agreed. Settled on 2026-10-03:<bdi>agreed &lt;by phone&gt;</bdi></li></ul>' +
        "<p><b>Gone since the review before (1):</b></p>" +
        '<ul><li><span class="at">Sheet Site, cell B9:</span>Was there.</li></ul>',
    );
    // In a first review no finding is called new.
    expect(page).not.toContain("<b>new</b>");
    const none = pageOf(file({ findings: [finding("A.")], kept: { id: "j", now: [], gone: [] } }));
    expect(none).not.toContain("Settled (");
    expect(none).not.toContain("Gone since");
  });

  test("one that cannot be read: nothing else is said of it", () => {
    const page = pageOf(
      file({ unreadable: "It is no workbook.", findings: [finding("A.")], facts: facts() }),
    );
    expect(page).toContain(
      '<section><h2 id="file-1">a.xlsx</h2><p><b>Cannot be read.</b>It is no workbook.</p></section>',
    );
    expect(page).toContain("<li><b>1 unreadable</b>: ask for the file again</li>");
  });
});

describe("of several", () => {
  const quoted = (from: number, to: number): Partial<PageFile> => ({
    headline: headline({ quoted: from, shouldBe: to }),
  });
  const named = (name: string, more: Partial<PageFile>): PageFile => file({ path: `x/${name}`, ...more });
  const all = [
    named("clean", {}),
    named("knowing", { findings: [finding("A.", "worth knowing")] }),
    named("doubtful", { findings: [finding("A.", "doubtful")] }),
    named("wrong", { findings: [finding("A.", "doubtful"), finding("B.")], ...quoted(70, 70) }),
    named("cent", quoted(70, 70.01)),
    named("lower", quoted(500, 100)),
    named("higher", quoted(1000, 1399)),
    named("totalless", { headline: headline({ shouldBe: 3 }) }),
    named("broken", { unreadable: "No workbook." }),
  ];

  test("by what is at stake: first what nobody knows, then by money either way, then by weight", () => {
    const page = pageOf(...all);
    const names = [...page.matchAll(/<h2 id="file-(\d+)">(\w+)</g)].map(([, number, name]) => [number, name]);
    expect(names).toEqual(
      ["broken", "totalless", "lower", "higher", "cent", "wrong", "doubtful", "knowing", "clean"].map(
        (name, index) => [String(index + 1), name],
      ),
    );
    expect(page).toContain("<title>Review of 9 workbooks</title>");
    expect(page).toContain("<h1>Review of 9 workbooks</h1>");
    expect(page).toContain("<b>1 wrong</b>");
    expect(page).toContain("<b>2 doubtful</b>");
    expect(page).toContain("<b>1 unreadable</b>");
    // Of one that cannot be read nothing is said but that.
    expect(page.match(/<a href="#">All workbooks<\/a>/g)).toHaveLength(8);
  });

  test("a table of them: quoted, should be, how many wrong and doubtful", () => {
    const unsure = { quoted: 80, shouldBe: 80, unknown: 1 };
    const page = pageOf(
      ...all.slice(3),
      named("unsure", { headline: headline(unsure) }),
      named("moved", { headline: headline({ ...unsure, shouldBe: 90 }) }),
      named("bare", { headline: headline({ unknown: 2 }) }),
    );
    const rows = [
      ...page.matchAll(/<tr><th scope="row"><a href="#file-(\d+)">(\w+)<\/a><\/th>(.*?)<\/tr>/g),
    ].map(([, number, name, cells]) => [
      number,
      name,
      ...cells!
        .replace(/<td class="sum">/g, "")
        .split("</td>")
        .slice(0, -1),
    ]);
    expect(rows).toEqual([
      ["1", "broken", "–", "cannot be read", "0", "0"],
      ["2", "totalless", "–", "3.00", "0", "0"],
      ["3", "bare", "–", "–", "0", "0"],
      ["4", "lower", "500.00", "100.00", "0", "0"],
      ["5", "higher", "1,000.00", "1,399.00", "0", "0"],
      ["6", "moved", "80.00", "90.00", "0", "0"],
      ["7", "cent", "70.00", "70.01", "0", "0"],
      ["8", "wrong", "70.00", "70.00", "1", "1"],
      ["9", "unsure", "80.00", "not known", "0", "0"],
    ]);
    expect(page).toContain("<caption>By what is at stake</caption>");
    expect(page).toContain(
      '<th scope="col">Workbook</th><th scope="col" class="sum">Quoted</th><th scope="col" class="sum">Should be about</th>' +
        '<th scope="col" class="sum">Wrong</th><th scope="col" class="sum">Doubtful</th>',
    );
  });

  test("what was looked for stands once at the end, in its order, found or not", () => {
    const page = pageOf(
      named("one", {
        facts: facts({ passed: ["unit slip", "duplicate"] }),
        findings: [finding("A.", "wrong", { rule: "feeding" })],
      }),
      named("two", { facts: facts({ passed: ["duplicate"] }), findings: [finding("A.")] }),
      named("three", { findings: [finding("A.", "wrong", { rule: "not told" })] }),
    );
    expect(page).toContain(
      '<section><h2>What was looked for</h2><p class="small">duplicate, feeding, unit slip.</p></section></main>',
    );
    expect(page).toContain(
      '<p class="small">2 things were looked for and not found; they are listed at the end.</p><p><a href="#">All workbooks</a></p>',
    );
    expect(page).not.toContain("Looked for and not found");
    expect(pageOf(named("one", {}), named("two", {}))).not.toContain("What was looked for");
    expect(pageOf()).toContain("<h1>Review of 0 workbooks</h1>");
  });
});
