import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { findMeshReader } from '../../../../scripts/mesh-reader.mjs';

/** A mesh file as an independent library reads it. */
export interface MeshFile {
  /** `[nNodes][3]` x, y, z. */
  readonly points: readonly (readonly number[])[];
  readonly cells: readonly { readonly type: string; readonly nodes: readonly (readonly number[])[] }[];
  /** By name, a value for each point. */
  readonly pointData: Readonly<Record<string, readonly number[]>>;
  /** By name, for each block of cells a value for each of them. */
  readonly cellData: Readonly<Record<string, readonly (readonly number[])[]>>;
  readonly fieldData: Readonly<Record<string, readonly number[]>>;
}

const python = findMeshReader();

/** Whether such a library is on this machine; on CI it has to be. */
export const canReadMeshes = python !== undefined || Boolean(process.env.CI);

/** @param ending of the file's name, which tells its format */
export function readMesh(content: string | Uint8Array, ending: '.vtu' | '.stl'): MeshFile {
  if (python === undefined) throw new Error('No Python with meshio was found.');
  const folder = mkdtempSync(join(tmpdir(), 'flathead-mesh-'));
  try {
    const file = join(folder, `head${ending}`);
    writeFileSync(file, content);
    const script = fileURLToPath(new URL('read-mesh.py', import.meta.url));
    return JSON.parse(execFileSync(python, [script, file], { encoding: 'utf8', maxBuffer: 1 << 28 }));
  } finally {
    rmSync(folder, { recursive: true });
  }
}
