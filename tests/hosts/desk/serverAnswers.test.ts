/** What the desk's server answers to what it can't do, and workbooks through it. */
import { readXlsx } from "../../../src/hosts/file/readXlsx";
import { sampleBook } from "../../support/books";
import { ask, BUILD_MS, buildDesk, sentenceOf, write } from "./desk";
import { change, document, edit, held, newId, ownDesk, post, put, shelf } from "./ownDesk";

jest.setTimeout(60_000);
beforeAll(buildDesk, BUILD_MS);
const desk = ownDesk();

describe("what can't be done", () => {
  test("what is not there: 404 and a sentence; what is none: 400 and a sentence", async () => {
    const { address } = await desk.start();
    const id = newId();
    await put(address, id, "r1");
    const told = async (answer: Promise<Response>): Promise<[number, string]> => {
      const response = await answer;
      return [response.status, await sentenceOf(response)];
    };
    const never = newId();
    for (const url of [`jobs/${never}`, `jobs/${never}?look`, `jobs/${never}/changes?after=x`])
      expect(await told(ask(address, url))).toEqual([404, "There is no such job here any more."]);
    expect(await told(edit(address, never, change("a", "b")))).toEqual([
      404,
      expect.stringMatching(/no such job/),
    ]);
    expect(await told(post(address, `jobs/${never}/notes`, { away: true }))).toEqual([
      404,
      expect.stringMatching(/no such job/),
    ]);
    expect(await told(put(address, "job-1", "r1"))).toEqual([404, "job-1 is no name of a job."]);
    expect(await told(put(address, "..%2Fx", "r1"))).toEqual([
      404,
      expect.stringMatching(/is no name of a job/),
    ]);
    expect(await told(post(address, `jobs/${id}/copies/catalogue`, {}))).toEqual([
      404,
      "catalogue is no name of a job.",
    ]);
    expect(await told(ask(address, `jobs/${id}/revisions/7`))).toEqual([404, "This job has no revision 7."]);
    expect(await told(post(address, `jobs/${id}/revisions/x/restore`, {}))).toEqual([
      404,
      expect.stringMatching(/^This job has no revision/),
    ]);
    expect(await told(ask(address, `export?job=${never}`))).toEqual([
      404,
      "There is no such job here any more.",
    ]);
    expect(await told(ask(address, `jobs/${id}/nothing`))).toEqual([
      404,
      expect.stringMatching(/^There is nothing at/),
    ]);
    expect(await told(put(address, newId(), "r1", { given: 1 }))).toEqual([
      404,
      "This desk was not started with that file.",
    ]);
    for (const url of [`jobs/${id}/file`, `jobs/${never}/file`])
      expect((await ask(address, url)).status).toBe(url.includes(id) ? 409 : 404);
    for (const body of [null, [], "text", {}, { document: {} }, { document: document("r2"), changes: [1] }]) {
      for (const [url, method] of [
        [`jobs/${newId()}`, "PUT"],
        [`jobs/${id}/changes`, "POST"],
        [`jobs/${id}/theirs`, "POST"],
        ["save", "POST"],
        ["copy/office", "POST"],
      ] as const)
        expect([body, url, (await write(address, url, method, JSON.stringify(body))).status]).toEqual([
          body,
          url,
          400,
        ]);
    }
    expect(await told(write(address, `jobs/${id}/changes`, "POST", "{"))).toEqual([
      400,
      "The request is not JSON.",
    ]);
    expect(await told(post(address, `jobs/${id}/notes`, { state: "lost" }))).toEqual([
      400,
      'A job is draft, checked, sent, accepted, done; "lost" is none of them.',
    ]);
    // Nothing came of any of it.
    expect((await shelf(address)).jobs).toMatchObject([{ id, state: "draft", revisions: [] }]);
    expect(await held(address, id)).toMatchObject({ document: document("r1"), changes: [] });
  });
});

describe("workbooks", () => {
  const book = sampleBook();

  test("a book goes out as .xlsx and comes back", async () => {
    const { address } = await desk.start();
    const saved = await post(address, "save", book);
    const bytes = new Uint8Array(await saved.arrayBuffer());
    const names = (await readXlsx(bytes)).names.map(({ name }) => name).sort();
    expect(names).toEqual(book.names.map(({ name }) => name).sort());
    const opened = await write(address, "open", "POST", bytes);
    expect(
      ((await opened.json()) as { names: { name: string }[] }).names.map(({ name }) => name).sort(),
    ).toEqual(names);
  });

  test("a broken .xlsx is refused with a sentence", async () => {
    const { address } = await desk.start();
    for (const bytes of [new Uint8Array(0), new TextEncoder().encode("not a workbook")]) {
      const answer = await write(address, "open", "POST", bytes);
      expect(answer.status).toBe(422);
      expect(await sentenceOf(answer)).toMatch(/^The file .*\. [A-Z].*\.$/);
    }
  });

  test("a request larger than the desk takes is refused before it is read", async () => {
    const { address } = await desk.start();
    const answer = await write(address, "open", "POST", new Uint8Array(65 * 1024 * 1024)).catch(
      () => undefined,
    );
    // The connection may be closed under the sender; either way nothing came of it.
    if (answer) expect(answer.status).toBe(413);
    expect((await ask(address, "/")).status).toBe(200);
  });
});
