/** Lines to try, by command, each with what it shows: the end of `flathead COMMAND --help`. */
export const HELP_EXAMPLES: Readonly<Record<string, readonly (readonly [line: string, shows: string])[]>> = {
  new: [
    ['flathead new --columns 5 --rows 2 --die 4.6,5.2 --write head.json', 'a head to start from'],
    ['flathead new --ribs both --fasteners 8 | flathead check -', 'judged at once'],
  ],
  check: [
    ['flathead check head.json', 'is it within its limits, and where is it worst?'],
    ['flathead check head.json --advise', 'what would bring it nearer, and by how much'],
    ['flathead check head.json --json', 'all of it for a script'],
  ],
  plate: [
    ['flathead plate plate.json', 'deflections, moments and reactions of any plate'],
    ['flathead schema plate-problem', 'what such a file may hold'],
  ],
  place: [
    ['flathead place head.json --count 8 --mirror both --write placed.json', 'best places for eight screws'],
    ['flathead place head.json --curve clearance', 'what each millimetre of clearance costs'],
  ],
  import: [
    ['flathead import probes probes.csv', 'what is in the file; nothing is changed'],
    ['flathead import probes probes.csv --into head.json --units um --write head.json', 'taken into a head'],
    [
      'flathead import outline board.dxf --into head.json --layer CONNECTORS --as keep-outs --write head.json',
      'keep-outs',
    ],
  ],
  export: [
    ['flathead export fasteners head.json --write fasteners.csv', 'coordinates for the board'],
    ['flathead export fields head.json --write fields.vtu', 'deflection and stress on the mesh'],
  ],
  sweep: [
    ['flathead sweep head.json --vary body.thickness=3..6:7', 'which thickness is enough?'],
    ['flathead sweep head.json --vary body.thickness=4..5:3 --vary "frame.ribs[0].width=1.5,2,2.5"', 'two at once'],
  ],
  tolerance: [
    ['flathead tolerance head.json --vary "body.thickness=tolerance(4.5, 0.05, 3)"', 'how many heads of a lot hold?'],
  ],
  budget: [['flathead budget head.json --limit 0.09 --independent "tip length=0.02"', 'what is left of the planarity']],
  sites: [['flathead sites head.json --pattern 8x1/3,0 --pattern 4x2/1,1', 'two patterns on one page']],
  merge: [['flathead merge part1.jsonl part2.jsonl', 'one study from two machines']],
  verify: [
    ['flathead verify', 'solves every case with a known answer'],
    ['flathead verify --only supports', 'one topic of it'],
  ],
  materials: [['flathead materials', 'names, values and where these come from']],
  screws: [['flathead screws', 'sizes, strength and where these come from']],
  schema: [
    ['flathead schema head-model', 'every key of a head, with its meaning and range'],
    ['flathead schema --write schemas', 'all kinds of files'],
  ],
  completion: [
    ['eval "$(flathead completion bash)"', 'in ~/.bashrc'],
    ['eval "$(flathead completion zsh)"', 'in ~/.zshrc, after compinit'],
  ],
};

/** The examples of a command as they stand below its help. */
export function helpExamples(name: string): string {
  const examples = HELP_EXAMPLES[name] ?? [];
  return ['', 'Examples:', ...examples.flatMap(([line, shows]) => [`  # ${shows}`, `  ${line}`])].join('\n');
}
