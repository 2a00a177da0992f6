import { setFlagsFromString } from 'node:v8';

// Node 20 knows relaxed SIMD but has it switched off; browsers and later versions have it on. Imported before kernels.
setFlagsFromString('--experimental-wasm-relaxed-simd');
