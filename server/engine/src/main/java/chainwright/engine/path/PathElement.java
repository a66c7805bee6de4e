package chainwright.engine.path;

import chainwright.dsp.filter.Response;
import chainwright.dsp.signal.RateFilter;
import chainwright.engine.stage.SampleRateConversion;
import chainwright.engine.stage.StageContext;
import chainwright.engine.stage.StageSound;
import chainwright.notation.diagnostic.Place;
import chainwright.notation.model.Branch;
import chainwright.notation.model.Step;
import chainwright.notation.model.Unread;
import chainwright.notation.model.Value;
import chainwright.quantity.SampleRate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** One thing on the way of a signal. */
public sealed interface PathElement {

  /**
   * Returns where it is written.
   *
   * @return its line; for a stage of a preset, the line in the preset
   */
  Place place();

  /**
   * Returns where it is brought in.
   *
   * @return the line of {@code apply} in the chain, for what comes from a preset; else empty
   */
  Optional<Place> appliedAt();

  /**
   * Asks whether it is out of the path.
   *
   * @return whether it, or the preset that brings it, is bypassed
   */
  boolean isBypassed();

  /**
   * Returns the sample rate.
   *
   * @return the rate of what comes to it
   */
  SampleRate rate();

  /**
   * Returns the same element out of the path.
   *
   * @return the copy
   */
  PathElement asBypassed();

  /**
   * A stage.
   *
   * @param stage the stage as written
   * @param place its line
   * @param appliedAt where its preset is applied, if it comes from one
   * @param isBypassed whether it is out of the path
   * @param isPartial whether only a part of the signal passes through it: a parallel path, a band,
   *     the middle, the side, or one passage
   * @param context its settings and where it stands
   * @param sound what it does; empty if its settings allow no design
   * @param sideChain what the signal passes on its way to the detector only
   */
  record StageElement(
      Step.Stage stage,
      Place place,
      Optional<Place> appliedAt,
      boolean isBypassed,
      boolean isPartial,
      StageContext context,
      Optional<StageSound> sound,
      List<PathElement> sideChain)
      implements PathElement {

    /**
     * Copies the side chain.
     *
     * @param stage the stage
     * @param place its line
     * @param appliedAt where its preset is applied
     * @param isBypassed whether it is out of the path
     * @param isPartial whether only a part of the signal passes through it
     * @param context its settings and where it stands
     * @param sound what it does
     * @param sideChain what the signal passes on its way to the detector
     */
    public StageElement {
      sideChain = List.copyOf(sideChain);
    }

    @Override
    public SampleRate rate() {
      return context.rate();
    }

    @Override
    public StageElement asBypassed() {
      return new StageElement(stage, place, appliedAt, true, isPartial, context, sound, sideChain);
    }

    /**
     * Asks whether the stage says all that it has to say.
     *
     * @return whether all that is written on its line could be read, and every setting that must be
     *     written is
     */
    public boolean isFinished() {
      return stage.settings().areFinished();
    }

    /**
     * Returns the name of the chain or bus that the stage listens to.
     *
     * @return the name after {@code key}; empty if it listens to its own signal
     */
    public Optional<String> key() {
      return context
          .settings()
          .value("key")
          .filter(Value.Reference.class::isInstance)
          .map(value -> ((Value.Reference) value).name());
    }

    /**
     * Returns the stage's word.
     *
     * @return such as "high-pass"
     */
    public String word() {
      return stage.kind().word();
    }

    /**
     * Returns the change of rate that the stage makes where it stands on the way of the whole
     * signal.
     *
     * @return its low-pass, which knows both rates; empty for a stage of another kind, one that is
     *     bypassed and one whose settings allow no design
     */
    public Optional<RateFilter> rateChange() {
      boolean changes = word().equals(SampleRateConversion.WORD) && !isBypassed;
      return changes
          ? sound.map(designed -> SampleRateConversion.filter(context))
          : Optional.empty();
    }

    /**
     * Returns where a finding about the stage should stand.
     *
     * @return the line of {@code apply} for a stage of a preset, else its own line
     */
    public Place shownAt() {
      return appliedAt.orElse(place);
    }
  }

  /**
   * A structure with branches: an insert, parallel paths, bands, middle and side, or a passage.
   *
   * @param step the structure as written
   * @param place its line
   * @param appliedAt where its preset is applied, if it comes from one
   * @param isBypassed whether it is out of the path
   * @param rate the sample rate that it runs at
   * @param branches what happens on its branches
   * @param response what it does to each frequency as a whole; a passage does nothing outside it,
   *     nor does anything that could not be read
   */
  record SplitElement(
      Step step,
      Place place,
      Optional<Place> appliedAt,
      boolean isBypassed,
      SampleRate rate,
      List<PathBranch> branches,
      Response response)
      implements PathElement {

    /**
     * Copies the branches.
     *
     * @param step the structure
     * @param place its line
     * @param appliedAt where its preset is applied
     * @param isBypassed whether it is out of the path
     * @param rate the sample rate that it runs at
     * @param branches its branches
     * @param response what it does as a whole
     */
    public SplitElement {
      branches = List.copyOf(branches);
    }

    /**
     * Returns what could not be read of its own settings and those of its branches. Nothing can be
     * said of it as a whole as long as there is some; what it holds keeps its meaning.
     *
     * @return the stretches, in the order of the text
     */
    public List<Unread> unread() {
      List<Unread> unread = new ArrayList<>();
      if (step instanceof Step.Insert insert) {
        unread.addAll(insert.settings().unread());
      } else if (step instanceof Step.Multiband multiband) {
        unread.addAll(multiband.settings().unread());
      }
      for (PathBranch branch : branches) {
        unread.addAll(branch.branch().settings().unread());
      }
      return unread;
    }

    @Override
    public SplitElement asBypassed() {
      return new SplitElement(step, place, appliedAt, true, rate, branches, response);
    }

    SplitElement withResponse(Response other) {
      return new SplitElement(step, place, appliedAt, isBypassed, rate, branches, other);
    }

    SplitElement withBranches(List<PathBranch> others) {
      return new SplitElement(step, place, appliedAt, isBypassed, rate, others, response);
    }
  }

  /**
   * One of the ways through a structure.
   *
   * @param branch the branch as written
   * @param elements what happens on it
   * @param response what it does to each frequency, its gain and band included
   */
  record PathBranch(Branch branch, List<PathElement> elements, Response response) {

    /**
     * Copies the elements.
     *
     * @param branch the branch
     * @param elements what happens on it
     * @param response what it does
     */
    public PathBranch {
      elements = List.copyOf(elements);
    }
  }
}
