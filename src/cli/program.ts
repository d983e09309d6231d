import { Command, Option } from 'commander';
import { roles, type Role } from '../core/role.ts';
import {
  filesByRequest,
  filesRequests,
  type FilesRequest,
} from '../served/files/filesByRequest.ts';
import { commandText as says } from '../words/texts.ts';
import type { ExitCode } from './output.ts';
import { version } from './version.ts';

/** What a program's help is divided by, as commander names it. */
const titles: Readonly<Record<string, string>> = says.titles;

/** Each command loads its own parts when it is called, so that none waits for another's. */
export const program = new Command('throughcut')
  .description(says.does)
  .version(version(), '-V, --version', says.version)
  .helpOption('-h, --help', says.help)
  .helpCommand('help [command]', says.help)
  // What an option may be is said by its own words: the library has words of its own for it.
  .configureHelp({
    styleTitle: (title) => titles[title] ?? title,
    optionDescription: ({ description }) => description,
  })
  .exitOverride()
  .configureOutput({ writeErr: () => undefined });

const ends = (work: Promise<ExitCode> | ExitCode): Promise<void> =>
  Promise.resolve(work).then((code) => {
    process.exitCode = code;
  });

program
  .command('serve')
  .description(says.serve.does)
  .option('--lan', says.serve.lan)
  .action(async (options: { lan?: boolean }) =>
    ends((await import('./serve.ts')).runServe(options)),
  );

const calc = program.command('calc').description(says.calc.does);
calc
  .command('fit')
  .description(says.calc.fit.does)
  .action(async () => ends((await import('./calc.ts')).runFit()));
calc
  .command('nextcard')
  .description(says.calc.nextcard.does)
  .action(async () => ends((await import('./calc.ts')).runNextCard()));
calc
  .command('order')
  .description(says.calc.order.does)
  .action(async () => ends((await import('./calc.ts')).runOrder()));
calc
  .command('plan')
  .description(says.calc.plan.does)
  .action(async () => ends((await import('./calc.ts')).runPlan()));
calc
  .command('compare')
  .description(says.calc.compare.does)
  .action(async () => ends((await import('./calc.ts')).runCompare()));

calc
  .command('kerf')
  .description(says.calc.kerf.does)
  .action(async () => ends((await import('./calc.ts')).runKerf()));
calc
  .command('marks')
  .description(says.calc.marks.does)
  .action(async () => ends((await import('./calc.ts')).runMarks()));
calc
  .command('shades')
  .description(says.calc.shades.does)
  .action(async () => ends((await import('./calc.ts')).runShades()));
calc
  .command('explain')
  .description(says.calc.explain.does)
  .action(async () => ends((await import('./explain.ts')).runCalcExplain()));

program
  .command('explain')
  .description(says.explain.does)
  .requiredOption('--study <file>', says.explain.study)
  .requiredOption('--out <file>', says.explain.out)
  .action(async (options: { study: string; out: string }) =>
    ends((await import('./explain.ts')).runExplain(options)),
  );

program
  .command('card')
  .description(says.card.does)
  .requiredOption('--request <file>')
  .requiredOption('--out <folder>')
  .action(async (options: { request: string; out: string }) =>
    ends((await import('./card.ts')).runCard(options)),
  );

program
  .command('grade')
  .description(says.grade.does)
  .option('--card <file>', says.grade.card)
  .option('--front <file>', says.grade.front)
  .option('--back <file>', says.grade.back)
  .option('--set <folder>', says.grade.set)
  .action(async (options: { card?: string; front?: string; back?: string; set?: string }) =>
    ends(
      options.set === undefined
        ? (await import('./grade.ts')).runGrade(options)
        : (await import('./gradeSet.ts')).runGradeSet(options.set),
    ),
  );

/** What each of them says that it does; one that says nothing does not compile. */
const doesByRequest: Readonly<Record<FilesRequest, string>> = says.byRequest;

for (const name of filesRequests)
  program
    .command(name)
    .description(doesByRequest[name])
    .requiredOption('--request <file>')
    .requiredOption('--out <folder>')
    .action(async (options: { request: string; out: string }) =>
      ends(
        (await import('./writeByRequest.ts')).writeByRequest(
          filesByRequest[name].fromFile,
          options,
        ),
      ),
    );

program
  .command('trial')
  .description(says.trial.does)
  .requiredOption('--out <folder>')
  .action(async (options: { out: string }) => ends((await import('./trial.ts')).runTrial(options)));

program
  .command('check')
  .description(says.check.does)
  .argument('<file>')
  .option('--card <file>', says.check.card)
  .option('--machine <file>', says.check.machine)
  .action(async (file: string, options: { card?: string; machine?: string }) =>
    ends((await import('./check.ts')).runCheck(file, options)),
  );

program
  .command('time')
  .description(says.time.does)
  .argument('<file>')
  .option('--machine <file>', says.time.machine)
  .option('--speed <mm/s>', says.time.speed)
  .option('--card <file>', says.time.card)
  .option('--took <time>', says.time.took)
  .action(
    async (
      file: string,
      options: { machine?: string; speed?: string; card?: string; took?: string },
    ) => ends((await import('./time.ts')).runTime(file, options)),
  );

program
  .command('proof')
  .description(says.proof.does)
  .argument('<file>')
  .requiredOption('--study <file>', says.proof.study)
  .option('--setting <words>', says.proof.setting)
  .option('--leave-out <names...>', says.proof.leaveOut)
  .action(async (file: string, options: { study: string; setting?: string; leaveOut?: string[] }) =>
    ends((await import('./proof.ts')).runProof(file, options)),
  );

program
  .command('grow')
  .description(says.grow.does)
  .argument('<file>')
  .requiredOption('--kerf <mm>', says.grow.kerf)
  .requiredOption('--out <file>', says.grow.out)
  .action(async (file: string, options: { kerf: string; out: string }) =>
    ends((await import('./grow.ts')).runGrow(file, options)),
  );

program
  .command('watch')
  .description(says.watch.does)
  .argument('<file>')
  .action(async (file: string) => ends((await import('./watch.ts')).runWatch(file)));

program
  .command('score')
  .description(says.score.does)
  .argument('<folder>', says.score.folder)
  .action(async (folder: string) => ends((await import('./score.ts')).runScore(folder)));

program
  .command('reference')
  .description(says.reference.does)
  .argument('<files...>')
  .action(async (files: string[]) => {
    const { runReference } = await import('./reference.ts');
    await ends(runReference(files, (line) => process.stdout.write(`${line}\n`)));
  });

const book = program.command('book').description(says.book.does);
book
  .command('list')
  .description(says.book.list.does)
  .argument('[words...]')
  .action(async (words: string[]) => ends((await import('./transfer.ts')).runBookList(words)));
book
  .command('changes')
  .description(says.book.changes.does)
  .action(async () => ends((await import('./trail.ts')).runBookChanges()));
book
  .command('take-back')
  .description(says.book.takeBack.does)
  .argument('<change>', says.book.takeBack.change)
  .option('--by <name>', says.book.takeBack.by)
  .action(async (change: string, by: { by?: string }) =>
    ends((await import('./trail.ts')).runTakeBack(change, by)),
  );

const phones = program.command('phones').description(says.phones.does);
phones
  .command('list')
  .description(says.phones.list.does)
  .action(async () => ends((await import('./phones.ts')).runPhonesList()));
phones
  .command('change')
  .description(says.phones.change.does)
  .argument('<phone>', says.phones.change.phone)
  .addOption(new Option('--role <role>', says.phones.change.role(roles)).choices(roles))
  .option('--name <name>', says.phones.change.name)
  .action(async (id: string, to: { role?: Role; name?: string }) =>
    ends((await import('./phones.ts')).runPhonesChange(id, to)),
  );

program
  .command('export')
  .description(says.export.does)
  .option('--to <file>', says.export.to)
  .option('--csv', says.export.csv)
  .option('--cells', says.export.cells)
  .option('--counts', says.export.counts)
  .action(
    async ({
      counts = false,
      csv = false,
      cells = false,
      ...to
    }: {
      to?: string;
      csv?: boolean;
      cells?: boolean;
      counts?: boolean;
    }) =>
      ends(
        counts
          ? (await import('./score.ts')).runExportCounts(to.to)
          : (await import('./transfer.ts')).runExport({
              ...to,
              ...(cells ? { table: 'cells' } : csv ? { table: 'book' } : {}),
            }),
      ),
  );
program
  .command('import')
  .description(says.import.does)
  .requiredOption('--from <file>')
  .action(async (options: { from: string }) =>
    ends((await import('./transfer.ts')).runImport(options)),
  );
program
  .command('backup')
  .description(says.backup.does)
  .requiredOption('--to <file>')
  .action(async (options: { to: string }) =>
    ends((await import('./backup.ts')).runBackup(options)),
  );
program
  .command('restore')
  .description(says.restore.does)
  .requiredOption('--from <file>')
  .action(async (options: { from: string }) =>
    ends((await import('./backup.ts')).runRestore(options)),
  );

program
  .command('move')
  .description(says.move.does)
  .requiredOption('--to <place>', says.move.to)
  .action(async (options: { to: string }) => ends((await import('./move.ts')).runMove(options)));
