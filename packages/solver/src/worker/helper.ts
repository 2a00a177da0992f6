/** A helper: takes part in the plan that it is sent to, in a memory that it shares. */
addEventListener('message', ({ data }: MessageEvent) => {
  const { module, memory, plan } = data as {
    readonly module: WebAssembly.Module;
    readonly memory: WebAssembly.Memory;
    readonly plan: number;
  };
  const { exports } = new WebAssembly.Instance(module, { env: { memory } });
  (exports.help as (plan: number) => void)(plan);
});
