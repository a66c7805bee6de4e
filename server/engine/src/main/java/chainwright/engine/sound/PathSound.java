package chainwright.engine.sound;

import chainwright.dsp.signal.FactorDesign;
import chainwright.dsp.signal.ProcessorDesign;
import chainwright.dsp.signal.RateConversion;
import chainwright.dsp.signal.SeriesDesign;
import chainwright.engine.path.PathElement.StageElement;
import chainwright.quantity.SampleRate;
import java.util.ArrayList;
import java.util.List;

/**
 * What processes the audio of a path.
 *
 * @param body what stands before the first change of the sample rate; without one, all of it but a
 *     dither at its end
 * @param legs the changes of the sample rate and what stands behind each, but a dither at the end
 * @param ending the dither at its end; nothing where there is none
 * @param silentStages the stages that it leaves out, since their kind is not processed yet or their
 *     settings allow no design; with any of them the sound is not that of the text
 */
public record PathSound(
    ProcessorDesign body,
    List<RateLeg> legs,
    ProcessorDesign ending,
    List<StageElement> silentStages) {

  private static final ProcessorDesign NOTHING = new SeriesDesign(List.of());

  /**
   * Copies the lists.
   *
   * @param body what stands before the first change of the sample rate
   * @param legs the changes of the sample rate and what stands behind each
   * @param ending the dither at its end
   * @param silentStages the stages that it leaves out
   */
  public PathSound {
    legs = List.copyOf(legs);
    silentStages = List.copyOf(silentStages);
  }

  /**
   * Returns the whole of it as one, or what stands before the first change of the sample rate.
   *
   * @return the design
   */
  public ProcessorDesign processor() {
    return processor(0);
  }

  /**
   * Returns the same with a gain at the end of the path. The gain stands before the dither, which
   * must be the last to change the samples: only then they keep to the steps of the word that it is
   * made for.
   *
   * @param gainDb the gain [dB], finite
   * @return the design; where the sample rate changes, the gain is in {@link #legs(double)}
   */
  public ProcessorDesign processor(double gainDb) {
    return legs.isEmpty() ? withEnd(body, gainDb) : body;
  }

  /**
   * Returns the changes of the sample rate and all that stands behind them, the dither included.
   *
   * @param gainDb a gain before the dither [dB], finite
   * @return the legs in order; none where the sample rate does not change
   */
  public List<RateLeg> legs(double gainDb) {
    List<RateLeg> whole = new ArrayList<>(legs);
    if (!whole.isEmpty()) {
      RateLeg last = whole.remove(whole.size() - 1);
      whole.add(new RateLeg(last.conversion(), withEnd(last.body(), gainDb)));
    }
    return whole;
  }

  private ProcessorDesign withEnd(ProcessorDesign last, double gainDb) {
    return new SeriesDesign(List.of(last, FactorDesign.ofGainDb(gainDb), ending));
  }

  /**
   * Returns the same converted to a rate at the end, before a dither.
   *
   * @param from the rate that the path delivers
   * @param to the rate that is wanted
   * @return the copy, with the usual conversion where the rates differ
   * @throws IllegalArgumentException if a rate is no whole number of hertz
   */
  public PathSound convertedTo(SampleRate from, SampleRate to) {
    if (from.equals(to)) {
      return this;
    }
    List<RateLeg> more = new ArrayList<>(legs);
    more.add(new RateLeg(RateConversion.design(from, to), NOTHING));
    return new PathSound(body, more, ending, silentStages);
  }

  /**
   * Returns how long a signal becomes by the changes of the sample rate.
   *
   * @param frames its length at the rate of what comes in, or a place in it [frames]
   * @return the length at the rate of what goes out, or the first frame at or after that place
   */
  public long deliveredFrames(long frames) {
    long delivered = frames;
    for (RateLeg leg : legs) {
      delivered = leg.conversion().outputFrames(delivered);
    }
    return delivered;
  }

  /**
   * Returns how much the legs must get until so much has come out of them.
   *
   * @param delivered how many frames are wanted at the rate of what goes out
   * @return how many it takes of what the body puts out without its latency [frames]
   */
  public long neededFrames(long delivered) {
    long needed = delivered;
    List<RateLeg> whole = legs(0);
    for (int i = whole.size() - 1; i >= 0; i--) {
      RateLeg leg = whole.get(i);
      needed = leg.conversion().inputFrames(needed == 0 ? 0 : needed + leg.body().latencyFrames());
    }
    return needed;
  }

  /**
   * Returns how long the sound goes on after its end.
   *
   * @return the tail at the rate of what comes in [frames], ≥ 0
   */
  public long tailFrames() {
    long tail = 0;
    List<RateLeg> whole = legs(0);
    for (int i = whole.size() - 1; i >= 0; i--) {
      RateConversion conversion = whole.get(i).conversion();
      tail =
          (long)
              Math.ceil(
                  (tail + whole.get(i).body().tailFrames())
                      * conversion.filter().from().hertz()
                      / conversion.filter().to().hertz());
    }
    return tail + processor().tailFrames();
  }
}
