// What no grammar of the notation can see, and why.

const catalogue = 'which stages, settings, units and limits there are is the catalogue';
const names = 'what a name stands for stands elsewhere in the file, or in another one';
const twice = 'a grammar does not remember what was said before';
const sense = 'what numbers mean beside each other';
const trade = 'a rule of the trade';
const disk = 'what lies on the disk';

/** By the code of the finding: a wrong file that is told nothing else is accepted. */
export const beyond = {
  'bands-do-not-meet': sense,
  'block-unexpected': catalogue,
  'bus-loop': names,
  'circular-apply': names,
  'circular-import': disk,
  'compress-before-de-ess': trade,
  'declared-twice': twice,
  'deliberate-silences-nothing': trade,
  'frequency-above-nyquist': sense,
  'idle-setting': catalogue,
  'import-not-found': disk,
  'impossible-value': sense,
  'key-is-itself': names,
  'malformed-ratio': catalogue,
  'malformed-time': sense,
  'missing-take': disk,
  'missing-unit': catalogue,
  'name-defined-twice': twice,
  'nested-too-deep': 'a grammar does not count',
  'outside-limits': catalogue,
  'over-steep-slope': trade,
  'range-missing': catalogue,
  'range-unexpected': catalogue,
  'range-upside-down': sense,
  'rumble-works-the-detector': trade,
  'setting-missing': catalogue,
  'setting-twice': twice,
  'setting-unnamed': catalogue,
  'unknown-bus': names,
  'unknown-chain': names,
  'unknown-preset': names,
  'unknown-rule': catalogue,
  'unknown-setting': catalogue,
  'unknown-source': catalogue,
  'unknown-stage': catalogue,
  'unknown-unit': catalogue,
  'unknown-word': catalogue,
  'value-missing': catalogue,
  'wrong-unit': catalogue,
};

/** Files with such a code that the grammar refuses, since there it names the words or asks for the value itself. */
export const refusedAllTheSame = {
  'alignment-half': 'alignment has two quantities',
  'apply-with-settings': 'apply has a name and nothing more',
  'declaration-in-the-session': 'the words of a session are listed',
  'during-without-a-time': 'during has a range',
  'intent-unknown': 'the words of an intent are listed',
  'path-name-without-as': 'a path has an amount, clauses and a block',
  'range-half': 'two quantities stand around "to"',
  'send-without-level': 'a send has a level',
  'stage-in-two-words': 'a structure is one word, and only structures have a block',
  'statement-at-the-top-unknown': 'the words at the top are listed',
};
