import { Argument, type Command, type Option } from 'commander';
import { EXIT } from './refusal.ts';
import type { Terminal } from './terminal.ts';

type Shell = 'bash' | 'zsh';

/** Adds `flathead completion`. */
export function addCompletion(program: Command, terminal: Terminal, ended: (code: number) => void): void {
  program
    .command('completion')
    .description('print a script by which a shell completes commands, options and their values')
    .addArgument(new Argument('<shell>', 'which').choices(['bash', 'zsh']))
    .action((shell: Shell) => {
      terminal.out(shell === 'bash' ? bash(program) : zsh(program));
      ended(EXIT.pass);
    });
}

const flags = ({ short, long }: Option): string[] => [short, long].filter((flag) => flag !== undefined);
const words = (list: readonly string[]): string => `'${list.join(' ').replaceAll("'", "'\\''")}'`;

/** Values before flags before the words of the command; what is none of them is a file. */
function bash(program: Command): string {
  const cases = program.commands.flatMap((command) => {
    const name = command.name();
    const values = command.options.filter(({ argChoices }) => argChoices !== undefined);
    const choices = command.registeredArguments[0]?.argChoices ?? [];
    return [
      ...values.flatMap((option) =>
        flags(option).map((flag) => `    ${name}:${flag}:*) known=${words(option.argChoices ?? [])} ;;`),
      ),
      `    ${name}:*:-*) known=${words(command.options.flatMap(flags).concat('--help'))} ;;`,
      ...(choices.length > 0 ? [`    ${name}:${name}:*) known=${words(choices)} ;;`] : []),
    ];
  });
  return `# Completion of flathead for bash: eval "$(flathead completion bash)"
_flathead() {
  local current="\${COMP_WORDS[COMP_CWORD]}" known=''
  COMPREPLY=()
  if [ "$COMP_CWORD" -eq 1 ]; then
    known=${words([...program.commands.map((command) => command.name()), '--help', '--version'])}
  else case "\${COMP_WORDS[1]}:\${COMP_WORDS[COMP_CWORD-1]}:$current" in
${cases.join('\n')}
  esac; fi
  COMPREPLY=($(compgen -W "$known" -- "$current"))
}
complete -o default -F _flathead flathead
`;
}

function zsh(program: Command): string {
  const plain = (text: string): string =>
    text
      .replace(/['"`\\]/g, '')
      .replace(/[[\]]/g, '')
      .replaceAll(':', ',');
  const list = (choices: readonly string[]): string => `(${choices.join(' ')})`;
  const spec = (option: Option): string[] =>
    flags(option).map((flag) => {
      const values = option.argChoices === undefined ? '_files' : list(option.argChoices);
      const takes = option.required || option.optional ? `:value:${values}` : '';
      return `'*${flag}[${plain(option.description)}]${takes}'`;
    });
  const cases = program.commands.map((command) => {
    const [first] = command.registeredArguments;
    const argument = first?.argChoices === undefined ? [] : [`'1:${first.name()}:${list(first.argChoices)}'`];
    return `    ${command.name()}) _arguments ${[...command.options.flatMap(spec), ...argument, "'*:file:_files'"].join(' ')} ;;`;
  });
  return `#compdef flathead
# Completion of flathead for zsh: eval "$(flathead completion zsh)"
_flathead() {
  local -a commands=(${program.commands.map((command) => `'${command.name()}:${plain(command.description())}'`).join(' ')})
  if (( CURRENT == 2 )); then _describe command commands; return; fi
  shift words
  (( CURRENT-- ))
  case $words[1] in
${cases.join('\n')}
  esac
}
compdef _flathead flathead
`;
}
