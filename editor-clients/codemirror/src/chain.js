import {
  delimitedIndent, foldInside, foldNodeProp, indentNodeProp, indentUnit, LanguageSupport, LRLanguage,
} from '@codemirror/language';
import { parser } from './parser/parser.js';

/** The chain notation: its parser, how its blocks are folded and indented, what a comment begins with. */
export const chainLanguage = LRLanguage.define({
  name: 'chain',
  parser: parser.configure({
    props: [
      indentNodeProp.add({ Block: delimitedIndent({ closing: '}', align: false }) }),
      foldNodeProp.add({ Block: foldInside }),
    ],
  }),
  languageData: {
    commentTokens: { line: '#' },
    closeBrackets: { brackets: ['{', '"'] },
    indentOnInput: /^\s*\}$/,
    wordChars: '-',
  },
});

/** The language as an extension, with the indentation that the formatter writes. */
export function chain() {
  return new LanguageSupport(chainLanguage, indentUnit.of('  '));
}
