" Vim syntax file for the chain notation: each word in the class that the language server gives it.
" Words are told apart by where they stand, so that a new stage or setting needs no line here.
if exists('b:current_syntax')
  finish
endif
scriptencoding utf-8
let s:cpo = &cpoptions
set cpoptions&vim

" The words that the server lists, held to it by a test.
let s:naming_statements = 'apply|bus|chain|group|preset|send|source|spill|to'
let s:naming_marks = 'as|deliberate|key'
let s:units = 'bit|bits|bpm|db|db/oct|db/octave|dbfs|dbtp|dbu|hertz|hz|k|khz|kilohertz|lkfs|lu|lufs|m|ms|msec|oct|octave|octaves|percent|s|sample|samples|sec|us|µs|μs'

" Vim has no class of all letters: beyond Latin-1, whatever is neither blank nor punctuation nor a symbol counts as one.
let s:letter = '[^\x00-\x40\x5b-\x60\x7b-\xa9\xab-\xb4\xb6-\xb9\xbb-\xbf\xd7\xf7\u1680\u2000-\u206f\u2190-\u2bff\u3000\ufeff\U0001d100-\U0001d1ff\U0001f000-\U0001faff]'
let s:wide_blank = '[\x0b\x0c\xa0\u1680\u2000-\u200b\u202f\u205f\u3000\ufeff]'
let s:blanks = '%([ \t]|' . s:wide_blank . ')*'
let s:in_word = '%(' . s:letter . '|[-0-9_]|/' . s:letter . '@=)'
let s:word = s:letter . s:in_word . '*'
let s:word_end = s:in_word . '@!'
let s:number = '[-+−–]?%(\d+/\d+|\d+%(:\d+)+%(\.\.@!\d*|,\d+)?|%(\.?\d)@=\d*%(\.\.@!\d*|,\d+)?%(:\d+%(\.\d*)?)?)'
let s:mark = '%(\.\.\.|…)'
" A statement begins at the start of a line and behind a brace.
let s:head = '\v%(%(^|[{}])' . s:blanks . ')@<='
" Lines that no statement goes on from: none, a blank one, a comment, a note, one that ends in a brace.
let s:nothing_above = '%(%^|^' . s:blanks . '%([#>].*)?\n|^%([^#"]|"[^"]*")*[{}]' . s:blanks . '%(#.*)?\n)@<='

" Defines group `chain` . name; what is `contained` is looked for only where another group asks for it.
function! s:match(name, pattern, ...) abort
  " The newer engine of Vim: the older one knows no large ranges of characters.
  execute 'syntax match chain' . a:name '~\%#=2\v' . a:pattern . '~' join(a:000)
endfunction

" Later definitions win where several match at the same place.
call s:match('Setting', s:word)
call s:match('UnitSign', '[%°]')
call s:match('Equals', '\=')
call s:match('Brace', '[{}]')
call s:match('Text', '"%(\\.|[^"\\])*%("|\\?$)')
call s:match('Text', '[“”]%(\\.|[^"”\\])*%(["”]|\\?$)')

" Quantities: a word that touches its number is its unit whatever it is, one behind a blank only if a unit is spelt so.
" Only the lower end of a range is followed by `to`.
for [s:end, s:contained, s:then] in [['High', 'contained', ''], ['', '', 'To']]
  let s:to = s:then ==# '' ? '' : 'skipwhite nextgroup=chainTo,chainToGap'
  let s:unit_or_to = 'chain' . s:end . 'Unit,chain' . s:end . 'UnitGap' . (s:then ==# '' ? '' : ',chain' . s:then)
  call s:match(s:end . 'Number', s:number, s:contained . ' skipwhite nextgroup=' . s:unit_or_to)
  call s:match(s:end . 'Number', s:number . '%([%°]|' . s:letter . ')@=', s:contained . ' nextgroup=chain' . s:end . 'GluedUnit')
  call s:match(s:end . 'GluedUnit', '%([%°]|' . s:word . ')', 'contained ' . s:to)
  call s:match(s:end . 'Unit', '\c%([%°]|%(' . s:units . ')' . s:word_end . ')', 'contained ' . s:to)
  call s:match(s:end . 'UnitGap', s:wide_blank . '+', 'contained skipwhite nextgroup=' . s:unit_or_to)
endfor
call s:match('To', 'to' . s:word_end . '%(' . s:blanks . '[-+−–]?\.?\d)@=', 'contained skipwhite nextgroup=chainHighNumber,chainHighGap')
call s:match('ToGap', s:wide_blank . '+', 'contained skipwhite nextgroup=chainTo,chainToGap')
call s:match('HighGap', s:wide_blank . '+', 'contained skipwhite nextgroup=chainHighNumber,chainHighGap')

" Names stand behind certain words, though it be on the line that goes on.
let s:name_next = 'skipwhite skipnl nextgroup=chainName,chainNameGap,chainNameJoint,chainNameComment'
call s:match('Name', '%(^' . s:blanks . ')@<!' . s:word, 'contained')
call s:match('NameGap', s:wide_blank . '+', 'contained ' . s:name_next)
call s:match('NameJoint', '%(^' . s:blanks . ')@<=' . s:mark, 'contained ' . s:name_next)
call s:match('NameComment', '#.*', 'contained ' . s:name_next)
call s:match('Setting', '%(' . s:naming_marks . ')' . s:word_end, s:name_next)

" The first word of a statement says what it is.
call s:match('Statement', s:head . s:word)
call s:match('Statement', s:head . '%(' . s:naming_statements . ')' . s:word_end, s:name_next)

call s:match('Dots', '\.\.\.')
call s:match('Continuation', '%(^' . s:blanks . ')@<=' . s:mark)
" Where nothing stands above that could go on, the mark is a mistake and the word behind it begins a statement.
let s:stray_next = 'skipwhite skipnl nextgroup=chainStray,chainStrayGap,chainStrayMark'
call s:match('Continuation', s:nothing_above . s:blanks . '\zs' . s:mark, s:stray_next)
call s:match('StrayGap', s:wide_blank . '+', 'contained ' . s:stray_next)
call s:match('StrayMark', '%(^' . s:blanks . ')@<=' . s:mark, 'contained ' . s:stray_next)
call s:match('Stray', '%(^' . s:blanks . ')@<!' . s:word, 'contained')

call s:match('Comment', '#.*')
call s:match('Slashes', '//.*')
call s:match('Prose', '%(^' . s:blanks . ')@<=\>.*')

" The texts of `note` are notes, though they stand on the line that goes on.
let s:note_next = 'skipwhite skipnl nextgroup=chainNoteText,chainNoteGap,chainNoteJoint,chainNoteComment'
call s:match('Statement', s:head . 'note' . s:word_end, s:note_next)
call s:match('NoteGap', s:wide_blank . '+', 'contained ' . s:note_next)
call s:match('NoteJoint', '%(^' . s:blanks . ')@<=' . s:mark, 'contained ' . s:note_next)
call s:match('NoteComment', '#.*', 'contained ' . s:note_next)
for s:text in ['"%(\\.|[^"\\])*%("|\\?$)', '[“”]%(\\.|[^"”\\])*%(["”]|\\?$)']
  call s:match('NoteText', '%(^' . s:blanks . ')@<!' . s:text, 'contained ' . s:note_next)
  " Behind other words, which have no place there.
  call s:match('NoteText', '%(%(^|[{}])' . s:blanks . 'note' . s:word_end . '%([^{}"“”#]|"%(\\.|[^"\\])*")*)@<=' . s:text, s:note_next)
endfor

highlight default link chainStatement Statement
highlight default link chainStray Statement
highlight default link chainSetting Identifier
highlight default link chainName Function
highlight default link chainNumber Number
highlight default link chainHighNumber Number
" A quantity is one thing to the eye; who wants its unit in another colour links this group elsewhere.
highlight default link chainUnit Number
highlight default link chainHighUnit chainUnit
highlight default link chainGluedUnit chainUnit
highlight default link chainHighGluedUnit chainUnit
highlight default link chainUnitSign chainUnit
highlight default link chainText String
highlight default link chainNoteText SpecialComment
highlight default link chainProse SpecialComment
highlight default link chainComment Comment
highlight default link chainNameComment Comment
highlight default link chainNoteComment Comment
highlight default link chainBrace Delimiter
highlight default link chainEquals Operator
highlight default link chainTo Operator
highlight default link chainContinuation Delimiter
highlight default link chainNameJoint Delimiter
highlight default link chainStrayMark Delimiter
highlight default link chainNoteJoint Delimiter

let b:current_syntax = 'chain'
let &cpoptions = s:cpo
unlet s:cpo
delfunction s:match
