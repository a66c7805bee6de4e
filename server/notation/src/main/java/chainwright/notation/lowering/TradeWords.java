package chainwright.notation.lowering;

import java.util.List;
import java.util.Set;

/**
 * Words of the trade that are no words of the notation, and the words that are written for them.
 *
 * <p>They are not read as stages: a chain has one word for one thing, so that it reads aloud and is
 * found by searching. But whoever types one is told the right word.
 *
 * <p>Source: common practice, no source.
 */
public final class TradeWords {

  private static final SaidFor WRITTEN = new SaidFor();

  static {
    WRITTEN.say("high-pass", "hp", "hpf", "highpass", "low-cut", "lowcut", "lc", "rumble-filter");
    WRITTEN.say("low-pass", "lp", "lpf", "lowpass", "high-cut", "highcut", "hc");
    WRITTEN.say("band-pass", "bp", "bpf", "bandpass");
    WRITTEN.say(
        "bell", "peak", "peaking", "dip", "parametric", "peq", "eq", "equaliser", "equalizer");
    WRITTEN.say("high-shelf", "shelf", "shelving", "highshelf", "treble", "air");
    WRITTEN.say("low-shelf", "shelf", "shelving", "lowshelf");
    for (String word : List.of("high-shelf", "low-shelf", "high-pass", "low-pass")) {
      WRITTEN.say(word, "eq", "equaliser", "equalizer");
    }
    for (String word : List.of("high-pass", "low-pass", "band-pass", "notch")) {
      WRITTEN.say(word, "filter");
    }
    WRITTEN.say("notch", "band-stop", "bandstop", "band-reject");
    WRITTEN.say("all-pass", "apf", "allpass", "phase");
    WRITTEN.say("polarity", "phase", "invert", "flip", "phase-invert", "polarity-invert");
    WRITTEN.say("compressor", "comp", "compress", "compression");
    WRITTEN.say("limiter", "limit", "limiting", "lim", "brickwall", "brick-wall", "peak-limiter");
    WRITTEN.say("true-peak-limiter", "brickwall", "brick-wall", "tp-limiter");
    WRITTEN.say("expander", "exp", "expand", "expansion", "downward-expander");
    WRITTEN.say("gate", "noise-gate", "gating");
    WRITTEN.say("ducker", "duck", "ducking");
    WRITTEN.say("de-ess", "de-esser", "deesser", "desser", "deess", "dess", "sibilance");
    WRITTEN.say("dynamic-bell", "dynamic-eq", "dyn-eq");
    WRITTEN.say("dynamic-shelf", "dynamic-eq", "dyn-eq");
    WRITTEN.say("multiband", "multiband-compressor", "multi-band", "mbc", "crossover");
    WRITTEN.say("mid-side", "ms", "m-s");
    WRITTEN.say("transient-shaper", "transient", "transients", "shaper");
    WRITTEN.say(
        "saturation", "sat", "saturate", "saturator", "distortion", "drive", "tape", "valve");
    WRITTEN.say("saturation", "tube", "transformer", "harmonics", "overdrive");
    WRITTEN.say("clipper", "clip", "clipping", "hard-clip", "soft-clip");
    WRITTEN.say("gain", "volume", "level", "trim", "makeup");
    WRITTEN.say("ride", "automation", "fade");
    WRITTEN.say("pan", "panning", "panorama", "balance");
    WRITTEN.say("width", "stereo", "stereo-width", "wide");
    WRITTEN.say("reverb", "verb", "rev", "reverberation", "plate", "hall", "ambience");
    WRITTEN.say("echo", "slap", "slapback", "delay-line", "repeats");
    WRITTEN.say("align", "time-align", "nudge");
    WRITTEN.say("hum-removal", "hum", "de-hum", "dehum");
    WRITTEN.say("noise-reduction", "denoise", "de-noise", "noise", "nr");
    WRITTEN.say("click-repair", "declick", "de-click", "click");
    WRITTEN.say("plosive-repair", "plosive", "de-plosive", "deplosive", "pop", "de-pop");
    WRITTEN.say("dc-offset-removal", "dc", "dc-offset", "dc-block", "dc-filter");
    WRITTEN.say("sample-rate-conversion", "src", "resample", "resampling");
    WRITTEN.say("send", "aux");
    WRITTEN.say("insert", "outboard", "hardware");
  }

  private TradeWords() {}

  /**
   * Returns what is written for a word of the trade.
   *
   * @param word the word, in any case
   * @return the words of the notation, likeliest first; empty if it is no such word
   */
  public static List<String> writtenFor(String word) {
    return WRITTEN.of(word);
  }

  /**
   * Returns every word of the trade that is known here.
   *
   * @return the words, in alphabetical order
   */
  public static Set<String> all() {
    return WRITTEN.all();
  }
}
