import { defineConfig } from 'vitest/config';
import { rooms } from './scripts/mutated-rooms.mjs';

/** Unit tests that mutants of a room of the solver core are held against; of all rooms where none is named. */
const room = process.env.MUTATED_ROOM;
const held = room === undefined ? Object.values(rooms) : [rooms[room as keyof typeof rooms]];
const inTests = (path: string) =>
  path.startsWith('/') ? path.slice(1) : `packages/solver/test/${path}${path.endsWith('.ts') ? '' : '/**/*.test.ts'}`;

export default defineConfig({
  test: {
    include: held.flatMap(({ tests }) => tests.map(inTests)),
    exclude: held.flatMap((each) => ('slow' in each ? each.slow.map(inTests) : [])),
    testTimeout: 60_000,
  },
});
