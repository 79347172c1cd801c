// Times the module built beside it: medians in µs of each way to factorise and solve the matrix of a bent.
import { readFile } from "node:fs/promises";

const RUNS = 300;
const file = new URL("target/wasm32-unknown-unknown/release/falsewright_matrices.wasm", import.meta.url);
const { instance } = await WebAssembly.instantiate(await readFile(file), {});
const ways = ["by_skyline", "by_sparse", "by_sparse_in_order"];

function median(run) {
  for (let i = 0; i < RUNS; i += 1) run();
  const times = Array.from({ length: RUNS }, () => {
    const start = performance.now();
    run();
    return (performance.now() - start) * 1e3;
  });
  return times.sort((a, b) => a - b)[RUNS / 2];
}

for (const legs of [50, 200, 1000]) {
  instance.exports.prepare(legs);
  const row = ways.map((way) => `${way} ${median(instance.exports[way]).toFixed(0)}`);
  console.log(`${legs} legs, µs: ${row.join(", ")}`);
}
