package chainwright.app.cli;

import chainwright.app.audiofile.AudioFiles;
import chainwright.app.audiofile.AudioFormat;
import chainwright.app.audiofile.AudioReader;
import chainwright.app.audiofile.AudioWriter;
import chainwright.app.audiofile.FileKind;
import chainwright.app.audiofile.SampleKind;
import java.io.IOException;
import java.nio.file.Path;
import java.util.SplittableRandom;

/** Recordings for tests, stored as doubles so that nothing is rounded. */
final class Takes {

  private Takes() {}

  /** White noise between ±0.1. */
  static double[] noise(int frames, long seed) {
    return new SplittableRandom(seed).doubles(frames).map(x -> 0.1 * (2 * x - 1)).toArray();
  }

  static Path write(Path file, int rateHz, double[]... channels) throws IOException {
    return write(
        file,
        AudioFormat.of(FileKind.WAVE, rateHz, channels.length, SampleKind.ofFloat(64)),
        channels);
  }

  static Path write(Path file, AudioFormat format, double[]... channels) throws IOException {
    try (AudioWriter writer = AudioFiles.create(file, format, true)) {
      writer.write(channels, 0, channels[0].length);
      writer.finish();
    }
    return file;
  }

  static double[][] read(Path file) throws IOException {
    try (AudioReader reader = AudioFiles.open(file)) {
      double[][] all = new double[reader.format().channels()][(int) reader.frames()];
      reader.read(all, 0, (int) reader.frames());
      return all;
    }
  }
}
