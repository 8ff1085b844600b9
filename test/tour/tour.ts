import { readContent } from '../../src/machine/content-file.ts';
import { deskFor, openDemo, type TestDesk } from '../screen/desk-for.ts';

const fenced = (title: string, text: string): string =>
  `**${title}**\n\n\`\`\`text\n${text.replace(/\s+$/, '')}\n\`\`\`\n`;

/** A date long after the demo builds were left, the same in every making. */
const NOW = (): Date => new Date('2026-11-20T19:00:00Z');

const at = (t: TestDesk, ...keys: string[]): string => {
  t.press(...keys);
  return t.text();
};

/** README's screens: the program's own rows, from its own demo builds. */
export const tour = async (): Promise<string> => {
  const content = readContent();
  const first = deskFor(content, { now: NOW });
  const screens: string[] = [fenced('The bench with no build yet', first.text())];

  const t = deskFor(content, { now: NOW });
  openDemo(t, 'orchard-bank-kicker');
  await t.think();
  screens.push(fenced('Back at the metric demo build after a pause', t.text()));
  screens.push(fenced('The next step: Enter goes on', at(t, '\r')));
  screens.push(fenced('f: the findings', at(t, 'f')));
  screens.push(fenced('Enter on the first: what it means, and what can be done', at(t, '\r')));
  t.press('\x1b', '\x1b');
  t.press('o');
  await t.think();
  screens.push(fenced('o: the order sheet', t.text()));
  t.press('\x1b');
  t.press('6');
  screens.push(fenced('6: uprights, cut to the rail that was measured', t.text()));
  screens.push(fenced('i: what to do now when hurt', at(t, 'i')));
  t.desk.leaveBuild();
  first.desk.leaveBuild();
  return screens.join('\n');
};

export const BEGIN = '<!-- tour:begin (made by npm run tour) -->';
export const END = '<!-- tour:end -->';

/** README with its tour made anew. */
export const withTour = (readme: string, screens: string): string => {
  const from = readme.indexOf(BEGIN);
  const to = readme.indexOf(END);
  if (from < 0 || to < from) throw new Error('README.md has no place for the tour');
  return `${readme.slice(0, from + BEGIN.length)}\n\n${screens}\n${readme.slice(to)}`;
};
