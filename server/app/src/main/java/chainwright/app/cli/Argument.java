package chainwright.app.cli;

import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/**
 * Reads what an option takes, and says what that is.
 *
 * @param <T> what is read
 */
interface Argument<T> extends ITypeConverter<T> {

  /**
   * Says what the option takes, such as "a number such as `80` or `-18.5`": what follows "must be"
   * in a complaint.
   */
  String expected();

  /** What {@link #convert} throws; {@link WrongUsage} says what was expected, and what came. */
  default TypeConversionException refusal() {
    return new TypeConversionException(expected());
  }
}
