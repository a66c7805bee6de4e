package chainwright.bench;

import chainwright.dsp.signal.ProcessorDesign;
import chainwright.engine.path.PathBuilder;
import chainwright.engine.sound.PathSound;
import chainwright.engine.sound.SoundBuilder;
import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.lowering.SectionReader;
import chainwright.notation.project.Project;
import chainwright.notation.project.Scope;
import chainwright.notation.project.SourceFile;
import java.util.List;

/** The chains that are measured, at 48 kHz. */
final class Chains {

  /** Ten second-order sections, as in a corrective chain. */
  static final String TEN_SECTIONS =
      """
      high-pass 40 Hz 12 dB/oct
      low-shelf 110 Hz 2.5 dB
      bell 240 Hz -3 dB Q 1.4
      bell 700 Hz -1.5 dB Q 2
      bell 1.8 kHz 2 dB Q 0.9
      bell 3.5 kHz 3 dB Q 1.1
      notch 50 Hz Q 20
      bell 7.2 kHz -4 dB Q 3
      high-shelf 10 kHz 2 dB
      low-pass 15 kHz 12 dB/oct
      """;

  /** The eight stages of a vocal. */
  static final String VOCAL =
      """
      de-ess band 5 to 9 kHz threshold -30 dBFS
      high-pass 80 Hz 12 dB/oct
      compressor threshold -24 dBFS ratio 3:1 attack 5 ms release 80 ms
      saturation tape oversampling 4
      bell 250 Hz -3 dB Q 1.2
      bell 900 Hz -1.5 dB Q 1.6
      bell 3.2 kHz 2 dB Q 0.9
      high-shelf 10 kHz 2 dB
      """;

  private Chains() {}

  /** Returns what processes the audio of a chain of these lines. */
  static ProcessorDesign design(String lines) {
    String key = "/measured.chain";
    SourceFile file =
        SourceFile.of(
            key, "chain measured {\n" + lines + "}\n", new SectionReader(Catalogue.load()));
    Scope scope = new Project(List.of(file)).scope(key);
    PathSound sound =
        SoundBuilder.build(
            new PathBuilder(scope).build(scope.track("measured").orElseThrow()), false);
    if (!sound.silentStages().isEmpty()) {
      throw new IllegalArgumentException("a stage of the chain is not processed");
    }
    return sound.processor();
  }
}
