package chainwright.app.workspace;

import static org.assertj.core.api.Assertions.assertThat;

import chainwright.dsp.signal.ProcessorDesign;
import chainwright.dsp.signal.Wiring;
import chainwright.dsp.spectral.FourierTransform;
import chainwright.engine.path.PathBuilder;
import chainwright.engine.path.PathElement.StageElement;
import chainwright.engine.path.PathSelection;
import chainwright.engine.path.SignalPath;
import chainwright.engine.sound.SoundBuilder;
import chainwright.notation.catalogue.Catalogue;
import chainwright.notation.lowering.SectionReader;
import chainwright.notation.model.Definition;
import chainwright.notation.project.Scope;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/**
 * The latency that is stated of every chain and bus of the examples is that of what they render.
 *
 * <p>A burst of soft noise is rendered; how late it comes is where its correlation with the burst
 * behind the plotted response is highest. Dynamics at work change only its size, and it is long
 * enough to be no click. Echoes and reverbs are left out: their sound comes later, but is no
 * latency.
 */
class ExampleLatencyTest {

  private static final Path GRAMMAR = Path.of("../../grammar");
  private static final SectionReader READER = new SectionReader(Catalogue.load());

  private static final Set<String> REPEATING = Set.of("echo", "reverb");

  private static final int BURST_FRAMES = 4096;

  /** What is rendered beyond the latency, so that a burst that comes too late is seen as well. */
  private static final int MORE_FRAMES = 1 << 15;

  /** Soft enough for most detectors, and for every curve that saturates [−60 dBFS]. */
  private static final double LARGEST = 1e-3;

  @TestFactory
  Stream<DynamicTest> chain_ofAnExample_comesAsLateAsStated() throws IOException {
    List<DynamicTest> tests = new ArrayList<>();
    for (String folder : List.of("examples", "demo")) {
      for (Path file : ChainFiles.under(List.of(GRAMMAR.resolve(folder)))) {
        DocumentSnapshot document =
            DocumentSnapshot.ofDisk(
                DocumentPath.ofFile(file.toAbsolutePath()), Files.readString(file), READER);
        Scope scope =
            Workspace.ofFolders(List.of(), READER).projectOf(document).scope(document.file().key());
        for (Definition.Track track : scope.tracks()) {
          SignalPath path = new PathBuilder(scope).build(track);
          if (!SoundBuilder.build(path, false).legs().isEmpty()) {
            // Its delay lies in two rates; that it is made up for is held where it is rendered.
            continue;
          }
          tests.add(
              DynamicTest.dynamicTest(
                  file.getFileName() + " " + track.name().text(), () -> check(path)));
        }
      }
    }
    assertThat(tests).hasSizeGreaterThan(30);
    return tests.stream();
  }

  private static void check(SignalPath path) {
    double statedFrames = Math.rint(SoundBuilder.latencySeconds(path) * path.rate().hertz());
    int length = Integer.highestOneBit((int) statedFrames + MORE_FRAMES) * 2;
    double[] burst = new double[length];
    Random random = new Random(1);
    for (int i = 0; i < BURST_FRAMES; i++) {
      burst[i] = LARGEST * (2 * random.nextDouble() - 1);
    }
    ProcessorDesign body = SoundBuilder.build(withoutRepeats(path), false).body();
    double[] rendered = render(body, burst);
    double[] silence = render(body, new double[length]);
    for (int i = 0; i < length; i++) {
      rendered[i] -= silence[i];
    }
    assertThat((double) delayFrames(rendered, burst, path)).isEqualTo(statedFrames);
  }

  private static SignalPath withoutRepeats(SignalPath path) {
    List<StageElement> repeating =
        path.stages().stream().filter(stage -> REPEATING.contains(stage.word())).toList();
    return PathSelection.of(List.copyOf(repeating)).without(path);
  }

  /** Renders a signal in both channels; whatever is listened to is silent. */
  private static double[] render(ProcessorDesign design, double[] input) {
    double[][] signal = {input.clone(), input.clone()};
    design.newProcessor(new Wiring(2, name -> new Silence())).process(signal, 0, input.length);
    return signal[0];
  }

  private static int delayFrames(double[] rendered, double[] burst, SignalPath path) {
    // Twice as long as what is rendered, so that nothing wraps around.
    int length = 2 * rendered.length;
    FourierTransform transform = new FourierTransform(length);
    int bins = transform.binCount();
    double[] re = new double[bins];
    double[] im = new double[bins];
    transform.forward(Arrays.copyOf(rendered, length), re, im);
    double[] expectedRe = new double[bins];
    double[] expectedIm = new double[bins];
    transform.forward(Arrays.copyOf(burst, length), expectedRe, expectedIm);
    double[] hertz = new double[bins - 2];
    Arrays.setAll(hertz, k -> (k + 1) * path.rate().hertz() / length);
    double[] plotRe = Arrays.copyOfRange(expectedRe, 1, bins - 1);
    double[] plotIm = Arrays.copyOfRange(expectedIm, 1, bins - 1);
    path.response().multiply(hertz, plotRe, plotIm);
    re[0] = 0;
    im[0] = 0;
    re[bins - 1] = 0;
    im[bins - 1] = 0;
    for (int k = 1; k < bins - 1; k++) {
      double real = re[k] * plotRe[k - 1] + im[k] * plotIm[k - 1];
      im[k] = im[k] * plotRe[k - 1] - re[k] * plotIm[k - 1];
      re[k] = real;
    }
    double[] correlation = new double[length];
    transform.inverse(re, im, correlation);
    int latest = 0;
    for (int i = 0; i < length; i++) {
      latest = Math.abs(correlation[i]) > Math.abs(correlation[latest]) ? i : latest;
    }
    return latest;
  }

  private static final class Silence implements Wiring.KeySignal {

    @Override
    public int channelCount() {
      return 2;
    }

    @Override
    public void read(long startFrame, double[][] into, int count) {
      for (double[] channel : into) {
        Arrays.fill(channel, 0, count, 0);
      }
    }
  }
}
