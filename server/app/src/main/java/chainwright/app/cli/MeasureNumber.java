package chainwright.app.cli;

import chainwright.app.report.MeasuredRecording;
import chainwright.dsp.loudness.ChannelLevels;
import chainwright.dsp.loudness.LoudnessReading;
import chainwright.dsp.loudness.SignalReading;
import chainwright.dsp.loudness.TruePeakReading;
import java.util.ArrayList;
import java.util.List;

/**
 * A reading with its name, for programs.
 *
 * @param name its name, the unit at its end
 * @param value its value; negative infinity for silence, NaN where there is none
 */
record MeasureNumber(String name, double value) {

  /** Returns what holds of the whole recording. */
  static List<MeasureNumber> whole(MeasuredRecording recording) {
    SignalReading reading = recording.reading();
    LoudnessReading loudness = reading.loudness();
    return List.of(
        new MeasureNumber("sampleRateHz", recording.format().sampleRateHz()),
        new MeasureNumber("lengthSeconds", recording.seconds()),
        new MeasureNumber("lengthFrames", reading.frameCount()),
        new MeasureNumber("rejectedSamples", reading.rejectedCount()),
        new MeasureNumber("integratedLufs", loudness.integratedLufs()),
        new MeasureNumber("relativeGateLufs", loudness.relativeGateLufs()),
        new MeasureNumber("shortTermMaxLufs", loudness.shortTermMaxLufs()),
        new MeasureNumber("momentaryMaxLufs", loudness.momentaryMaxLufs()),
        new MeasureNumber("rangeLu", loudness.rangeLu()),
        new MeasureNumber("correlation", reading.correlation()));
  }

  /** Returns what holds of one channel, from 0. */
  static List<MeasureNumber> channel(MeasuredRecording recording, int channel) {
    TruePeakReading peak = recording.reading().truePeaks().get(channel);
    ChannelLevels levels = recording.reading().levels().get(channel);
    List<MeasureNumber> numbers = new ArrayList<>();
    numbers.add(new MeasureNumber("truePeakDbtp", peak.annex2Dbtp()));
    numbers.add(new MeasureNumber("fineTruePeakDbtp", peak.fineDbtp()));
    numbers.add(new MeasureNumber("samplePeakDbfs", levels.samplePeakDbfs()));
    numbers.add(new MeasureNumber("rmsDbfs", levels.rmsDbfs()));
    numbers.add(new MeasureNumber("crestFactorDb", levels.crestDb()));
    numbers.add(new MeasureNumber("offset", levels.offsetAmplitude()));
    numbers.add(new MeasureNumber("noiseFloorDbfs", levels.noiseFloorDbfs()));
    numbers.add(new MeasureNumber("clippedRuns", levels.clipped().count()));
    numbers.add(new MeasureNumber("clippedSamples", levels.clipped().sampleCount()));
    numbers.add(new MeasureNumber("longestClippedSamples", levels.clipped().longestSamples()));
    return numbers;
  }

  /** Asks whether the value is a count. */
  boolean isWhole() {
    return value == Math.rint(value) && Math.abs(value) < 1L << 53;
  }
}
