package chainwright.notation.fault;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/**
 * What can be wrong with a text, as far as no rule of the trade is needed to see it. Each has a
 * page of its code, with a text that has the fault and one that has not.
 */
public enum Fault {
  /** Two bands of a split with a gap between them, or an overlap. */
  BANDS_DO_NOT_MEET,
  /** A structure without the parts that it is made of. */
  BLOCK_EMPTY,
  /** A statement that says nothing without its block. */
  BLOCK_MISSING,
  /** A block without the statement that it belongs to. */
  BLOCK_OF_NOTHING,
  /** A block of a stage that takes none. */
  BLOCK_UNEXPECTED,
  /** An opening brace that does not stand at the end of its statement's line. */
  BRACE_ON_ITS_OWN_LINE,
  /** A preset that applies itself, by whatever detour. */
  CIRCULAR_APPLY,
  /** A file that imports itself, by whatever detour. */
  CIRCULAR_IMPORT,
  /** A mark of continuation with no statement on the line just above it. */
  CONTINUES_NOTHING,
  /** A number with a comma. */
  DECIMAL_COMMA,
  /** A declaration below the first stage. */
  DECLARATION_AFTER_A_STAGE,
  /** A second session, or a second line of a declaration that can be made once. */
  DECLARED_TWICE,
  /** A clause that silences a rule which finds nothing there. */
  DELIBERATE_SILENCES_NOTHING(false),
  /** A setting that has no effect beside what else is written. */
  IDLE_SETTING(false),
  /** An imported file that cannot be read. */
  IMPORT_NOT_FOUND,
  /** A value that is no number. */
  IMPOSSIBLE_VALUE,
  /** A stage whose detector is told to listen to its own chain. */
  KEY_IS_ITSELF,
  /** A name that is not in lower case with hyphens. */
  MALFORMED_NAME,
  /** A ratio that is not to one. */
  MALFORMED_RATIO,
  /** A time whose minutes or seconds run over. */
  MALFORMED_TIME,
  /** A clause that stands before a setting. */
  MISPLACED_MARK,
  /** A word of the notation where it cannot stand. */
  MISPLACED_WORD,
  /** Two words or values without a blank between them. */
  MISSING_BLANK,
  /** A block that is never closed. */
  MISSING_BRACE,
  /** A recording that is not there. */
  MISSING_TAKE(false),
  /** A number without its unit. */
  MISSING_UNIT,
  /** A name or a label that is given twice. */
  NAME_DEFINED_TWICE,
  /** A statement that lacks a name. */
  NAME_MISSING,
  /** More blocks in each other than are read. */
  NESTED_TOO_DEEP,
  /** A chain where a bus must be named. */
  NOT_A_BUS,
  /** A recording or a picture where a chain file belongs. */
  NOT_TEXT,
  /** A note with nothing above that it could belong to. */
  NOTE_WITHOUT_STATEMENT(false),
  /** A stage at the top of a file. */
  OUTSIDE_A_CHAIN,
  /**
   * A sample rate that cannot be run at. A rule of this name speaks of the settings of stages, and
   * has the page.
   */
  OUTSIDE_LIMITS,
  /** A part of a structure that can be there once. */
  PART_TWICE,
  /** One value where a range belongs. */
  RANGE_MISSING,
  /** A range where one value belongs. */
  RANGE_UNEXPECTED,
  /** A range that does not begin with the lower value. */
  RANGE_UPSIDE_DOWN,
  /** A range written with a dash. */
  RANGE_WITH_DASH,
  /** A rule silenced without a reason. */
  REASON_MISSING,
  /** A setting that cannot be left out. */
  SETTING_MISSING,
  /** A setting given twice, or two that exclude each other. */
  SETTING_TWICE,
  /** A value that several settings could take. */
  SETTING_UNNAMED,
  /** A comment begun with slashes. */
  SLASH_COMMENT,
  /** A character that means nothing where it stands. */
  STRAY_CHARACTER,
  /** An equals sign in a setting. */
  STRAY_EQUALS,
  /** A text in quotes where none belongs. */
  STRAY_TEXT,
  /** A closing brace that closes nothing. */
  SURPLUS_BRACE,
  /** Something behind a statement that is complete. */
  SURPLUS_WORDS,
  /** Something behind a closing brace on its line. */
  TEXT_AFTER_BRACE,
  /** A statement that lacks a text in quotes. */
  TEXT_MISSING,
  /** A bus that is not defined. */
  UNKNOWN_BUS,
  /** A chain or bus that is not defined. */
  UNKNOWN_CHAIN,
  /** A note name that is none. */
  UNKNOWN_NOTE,
  /** A preset that is not defined. */
  UNKNOWN_PRESET,
  /** A rule that does not exist. */
  UNKNOWN_RULE,
  /** A setting that the stage does not have. */
  UNKNOWN_SETTING,
  /** A kind of source that does not exist. */
  UNKNOWN_SOURCE,
  /** A stage that does not exist. */
  UNKNOWN_STAGE,
  /** A unit that does not exist. */
  UNKNOWN_UNIT,
  /** A word that cannot stand there. */
  UNKNOWN_WORD,
  /** A text whose closing quote is missing. */
  UNTERMINATED_STRING,
  /** A setting or a statement without its value. */
  VALUE_MISSING,
  /** A statement that does not begin with a word. */
  WORD_EXPECTED,
  /** A value in a unit that cannot stand there. */
  WRONG_UNIT;

  private final boolean isError;
  private final String code = name().toLowerCase(Locale.ROOT).replace('_', '-');

  Fault() {
    this(true);
  }

  Fault(boolean isError) {
    this.isError = isError;
  }

  /**
   * Finds a fault by its code.
   *
   * @param code such as "wrong-unit", in any letter case
   * @return the fault, or empty if there is none
   */
  public static Optional<Fault> find(String code) {
    return Arrays.stream(values()).filter(fault -> fault.code.equalsIgnoreCase(code)).findFirst();
  }

  /**
   * Returns the code that findings carry.
   *
   * @return in kebab case, such as "wrong-unit"; also the name of its page
   */
  public String code() {
    return code;
  }

  /**
   * Asks how grave it is.
   *
   * @return whether something that is written has no meaning, which is an error; else a warning
   */
  public boolean isError() {
    return isError;
  }
}
