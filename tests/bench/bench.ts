/** `npm run bench -- accuracy|cohorts|fairness|list|method|misleading|outside|sensitivity|soak|speed`: figures that are printed, and written with `--json FILE`. */
import { accuracyCommand } from './accuracy/accuracy-command';
import { cohortsCommand } from './cohorts/cohorts-command';
import { fairnessCommand } from './fairness/fairness-command';
import { listCommand } from './list/list-command';
import { methodCommand } from './method/method-command';
import { misleadingCommand } from './misleading/misleading-command';
import { outsideCommand } from './outside/outside-command';
import { sensitivityCommand } from './sensitivity/sensitivity-command';
import { soakCommand } from './soak/soak-command';
import { speedCommand } from './speed/speed-command';

const COMMANDS: Readonly<Record<string, (words: readonly string[]) => Promise<void>>> = {
  accuracy: accuracyCommand,
  cohorts: cohortsCommand,
  fairness: fairnessCommand,
  list: listCommand,
  method: methodCommand,
  misleading: misleadingCommand,
  outside: outsideCommand,
  sensitivity: sensitivityCommand,
  soak: soakCommand,
  speed: speedCommand,
};

const [name, ...words] = process.argv.slice(2);
const command = COMMANDS[name ?? ''];
if (command) {
  await command(words);
} else {
  console.error(`Which bench? ${Object.keys(COMMANDS).join(', ')}. For example: npm run bench -- accuracy --photos 60`);
  process.exitCode = 2;
}
