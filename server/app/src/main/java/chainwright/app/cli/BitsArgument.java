package chainwright.app.cli;

import chainwright.app.audiofile.SampleKind;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads how samples are to be stored. */
final class BitsArgument implements ITypeConverter<SampleKind> {

  @Override
  public SampleKind convert(String text) {
    return switch (text) {
      case "16" -> SampleKind.ofInteger(16);
      case "24" -> SampleKind.ofInteger(24);
      case "32f" -> SampleKind.ofFloat(32);
      case "64f" -> SampleKind.ofFloat(64);
      default ->
          throw new TypeConversionException(
              "`" + text + "` is no way to store samples; there are 16, 24, 32f and 64f");
    };
  }
}
