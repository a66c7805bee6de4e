package chainwright.dsp.repair;

import chainwright.dsp.signal.Processor;
import java.util.Arrays;

/** Finds and rebuilds clicks in frames that overlap by half, each channel on its own. */
final class ClickRepair implements Processor {

  /** How often the prediction is fitted again to what was rebuilt. */
  private static final int PASSES = 3;

  private final int length;
  private final int hop;
  private final int longest;
  private final double[][] frames;
  private final double[][] coming;
  private final double[] clean;
  private final double[] errors;
  private final LinearPrediction prediction;
  private final LinearPrediction again;
  private final ClickSearch search;
  private final GapInterpolation interpolation;

  // Made once, since each time would leave garbage.
  private final ClickSearch.Found cleaning = this::fillClean;
  private final ClickSearch.Found rebuilding = this::rebuild;

  /** The frame that is rebuilt just now. */
  private double[] frame;

  private int filled;

  ClickRepair(int channelCount, int length, int order, int longest, int around) {
    this.length = length;
    this.longest = longest;
    hop = length / 2;
    frames = new double[channelCount][length];
    coming = new double[channelCount][hop];
    clean = new double[length];
    errors = new double[length];
    prediction = new LinearPrediction(order, length);
    again = new LinearPrediction(order, length);
    search = new ClickSearch(order, length, around);
    interpolation = new GapInterpolation(order, longest + 2 * order);
    frame = frames[0];
  }

  @Override
  public void process(double[][] channels, int from, int to) {
    int at = from;
    while (at < to) {
      int count = Math.min(to - at, hop - filled);
      for (int c = 0; c < frames.length; c++) {
        System.arraycopy(channels[c], at, coming[c], filled, count);
        System.arraycopy(frames[c], filled, channels[c], at, count);
      }
      filled += count;
      at += count;
      if (filled == hop) {
        filled = 0;
        for (int c = 0; c < frames.length; c++) {
          System.arraycopy(frames[c], hop, frames[c], 0, hop);
          System.arraycopy(coming[c], 0, frames[c], hop, hop);
          frame = frames[c];
          repair();
        }
      }
    }
  }

  private void repair() {
    if (!prediction.fit(frame)) {
      return;
    }
    prediction.forwardErrors(frame, errors);
    System.arraycopy(frame, 0, clean, 0, length);
    if (search.suspect(errors, longest, cleaning)) {
      // A strong click has bent the prediction towards itself; without it, its ends show.
      prediction.fit(clean);
      prediction.forwardErrors(frame, errors);
      search.search(frame, prediction, errors, longest, rebuilding);
    }
  }

  private void fillClean(int start, int end) {
    interpolation.fill(clean, start, end, prediction.coefficients());
  }

  private void rebuild(int start, int end) {
    double[] coefficients = prediction.coefficients();
    for (int pass = 0; pass < PASSES; pass++) {
      interpolation.fill(frame, start, end, coefficients);
      if (!again.fit(frame)) {
        // The click was all that there was.
        return;
      }
      coefficients = again.coefficients();
    }
  }

  @Override
  public void reset() {
    for (int c = 0; c < frames.length; c++) {
      Arrays.fill(frames[c], 0);
      Arrays.fill(coming[c], 0);
    }
    filled = 0;
  }
}
