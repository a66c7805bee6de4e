package chainwright.app.cli;

import chainwright.app.audiofile.SampleKind;

/** Reads how samples are to be stored. */
final class BitsArgument implements Argument<SampleKind> {

  @Override
  public String expected() {
    return "`16` or `24` for integers, `32f` or `64f` for floats";
  }

  @Override
  public SampleKind convert(String text) {
    return switch (text) {
      case "16" -> SampleKind.ofInteger(16);
      case "24" -> SampleKind.ofInteger(24);
      case "32f" -> SampleKind.ofFloat(32);
      case "64f" -> SampleKind.ofFloat(64);
      default -> throw refusal();
    };
  }
}
