package chainwright.engine.rules;

import java.util.List;

/** Names every rule. A test holds the list to the folders of pages and examples. */
final class RuleList {

  static final List<Rule> ALL =
      List.of(
          new AlignBeforeNonlinear(),
          new AlignmentMissing(),
          new AllPassWithoutPartner(),
          new BlendOfShiftedPaths(),
          new BoostBeyondHearing(),
          new BrightBoostAfterDeEss(),
          new BusLoop(),
          new BypassedLeftBehind(),
          new CompressBeforeDeEss(),
          new CornerInsideFundamentals(),
          new CrampedNearNyquist(),
          new CutAndBoostCancel(),
          new DeviceOverdriven(),
          new DitherIsLast(),
          new DrySoundLost(),
          new ExtremeValue(),
          new FrequencyAboveNyquist(),
          new GateAfterCompressor(),
          new HighPassFightsLowBoost(),
          new InaudibleMove(),
          new InsertLatencyUnmeasured(),
          new LargeTotalBoost(),
          new LaterBoostUndoesCut(),
          new LowBoostEatsHeadroom(),
          new LowNoteDistortion(),
          new MakeUpExceedsReduction(),
          new MixBusLowCutTooHigh(),
          new NarrowBoost(),
          new NaturalVocalOverCompressed(),
          new NonlinearStageAliases(),
          new NotchOnPlayedNote(),
          new OrphanSend(),
          new OutsideLimits(),
          new OverSteepSlope(),
          new ParallelPathLate(),
          new PeakyFilterCorner(),
          new PreFaderSurprise(),
          new ProcessingAfterCeiling(),
          new RateChangeMisplaced(),
          new ReturnConverterOverload(),
          new ReturnNotFullyWet(),
          new ReverbFeedsDynamics(),
          new RumbleWorksTheDetector(),
          new SameBandRepeated(),
          new SaturateAfterCleanUp(),
          new StackedCompressors(),
          new StackedHighPasses(),
          new SteepFilterOnSpill(),
          new TiltFightsShelf(),
          new TooManyBands(),
          new TwoWaysToTheMix(),
          new UncommonValue(),
          new WideDeepCut());

  private RuleList() {}
}
