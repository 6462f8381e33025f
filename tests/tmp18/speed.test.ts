import { packReels } from "../../src/engine/estimate/packReels";
import { isFault } from "../../src/engine/faults";
import { drawn } from "../support/drawn";
test("speed", () => {
  const rows: string[] = [];
  for (const [n, lo, hi, dec, reel, slack, waste] of [
    [240, 5, 45, 1, 100, 1.5, 0], [240, 5, 45, 1, 100, 1.5, 0.05], [240, 5, 45, 1, 305, 2, 0.1], [240, 20, 60, 1, 100, 2, 0],
    [240, 20, 60, 0, 100, 2, 0],[120, 25, 50, 1, 100, 0, 0],[240, 25, 50, 1, 100, 0, 0],[120, 20, 60, 0.5, 152, 2, 0.1],[60, 20, 60, 1, 100, 2, 0.05],[10000, 5, 45, 1, 305, 2, 0.05],[10000, 25, 50, 1, 100, 2, 0.05],
  ] as const) {
    let worst = 0, sum = 0, proved = 0, over = 0;
    const rounds = n > 1000 ? 2 : 10;
    for (let s = 0; s < rounds; s++) {
      const d = drawn(s + n);
      const runs = Array.from({ length: n }, (_, i) => ({ label: `${i}`, length: Math.round(d.between(lo, hi, 2) * (dec === 0.5 ? 2 : 10 ** dec)) / (dec === 0.5 ? 2 : 10 ** dec) }));
      const t = performance.now();
      const p = packReels(runs, reel, slack, waste);
      const ms = performance.now() - t;
      worst = Math.max(worst, ms); sum += ms;
      if (!isFault(p)) { if (p.proved) proved++; over += p.reels.length - Math.ceil(runs.reduce((a, r) => a + (r.length + slack) * (1 + waste), 0) / reel - 1e-9); }
    }
    rows.push(`${[n, lo, hi, dec, reel, slack, waste].join(" ")}: mean ${(sum / rounds).toFixed(1)} ms worst ${worst.toFixed(1)} proved ${proved}/${rounds} over ${over}`);
  }
  console.log(rows.join("\n"));
});
