package chainwright.notation.lowering;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/**
 * Words of the trade that are no words of the notation, and the words that are written for them.
 *
 * <p>They are not read as stages: a chain has one word for one thing, so that it reads aloud and is
 * found by searching. But whoever types one is told the right word.
 *
 * <p>Source: common practice, no source.
 */
public final class TradeWords {

  private static final Map<String, List<String>> WRITTEN = new TreeMap<>();

  static {
    say("high-pass", "hp", "hpf", "highpass", "low-cut", "lowcut", "lc", "rumble-filter");
    say("low-pass", "lp", "lpf", "lowpass", "high-cut", "highcut", "hc");
    say("band-pass", "bp", "bpf", "bandpass");
    say("bell", "peak", "peaking", "dip", "parametric", "peq", "eq", "equaliser", "equalizer");
    say("high-shelf", "shelf", "shelving", "highshelf", "treble", "air");
    say("low-shelf", "shelf", "shelving", "lowshelf");
    for (String word : List.of("high-shelf", "low-shelf", "high-pass", "low-pass")) {
      say(word, "eq", "equaliser", "equalizer");
    }
    for (String word : List.of("high-pass", "low-pass", "band-pass", "notch")) {
      say(word, "filter");
    }
    say("notch", "band-stop", "bandstop", "band-reject");
    say("all-pass", "apf", "allpass", "phase");
    say("polarity", "phase", "invert", "flip", "phase-invert", "polarity-invert");
    say("compressor", "comp", "compress", "compression");
    say("limiter", "limit", "limiting", "lim", "brickwall", "brick-wall", "peak-limiter");
    say("true-peak-limiter", "brickwall", "brick-wall", "tp-limiter");
    say("expander", "exp", "expand", "expansion", "downward-expander");
    say("gate", "noise-gate", "gating");
    say("ducker", "duck", "ducking");
    say("de-ess", "de-esser", "deesser", "desser", "deess", "dess", "sibilance");
    say("dynamic-bell", "dynamic-eq", "dyn-eq");
    say("dynamic-shelf", "dynamic-eq", "dyn-eq");
    say("multiband", "multiband-compressor", "multi-band", "mbc", "crossover");
    say("mid-side", "ms", "m-s");
    say("transient-shaper", "transient", "transients", "shaper");
    say("saturation", "sat", "saturate", "saturator", "distortion", "drive", "tape", "valve");
    say("saturation", "tube", "transformer", "harmonics", "overdrive");
    say("clipper", "clip", "clipping", "hard-clip", "soft-clip");
    say("gain", "volume", "level", "trim", "makeup");
    say("ride", "automation", "fade");
    say("pan", "panning", "panorama", "balance");
    say("width", "stereo", "stereo-width", "wide");
    say("reverb", "verb", "rev", "reverberation", "plate", "hall", "ambience");
    say("echo", "slap", "slapback", "delay-line", "repeats");
    say("align", "time-align", "nudge");
    say("hum-removal", "hum", "de-hum", "dehum");
    say("noise-reduction", "denoise", "de-noise", "noise", "nr");
    say("click-repair", "declick", "de-click", "click");
    say("plosive-repair", "plosive", "de-plosive", "deplosive", "pop", "de-pop");
    say("dc-offset-removal", "dc", "dc-offset", "dc-block", "dc-filter");
    say("sample-rate-conversion", "src", "resample", "resampling");
    say("send", "aux");
    say("insert", "outboard", "hardware");
  }

  private TradeWords() {}

  /**
   * Returns what is written for a word of the trade.
   *
   * @param word the word, in any case
   * @return the words of the notation, likeliest first; empty if it is no such word
   */
  public static List<String> writtenFor(String word) {
    return List.copyOf(WRITTEN.getOrDefault(word.toLowerCase(Locale.ROOT), List.of()));
  }

  /**
   * Returns every word of the trade that is known here.
   *
   * @return the words, in alphabetical order
   */
  public static Set<String> all() {
    return new LinkedHashSet<>(WRITTEN.keySet());
  }

  private static void say(String written, String... words) {
    for (String word : words) {
      WRITTEN.computeIfAbsent(word, key -> new ArrayList<>()).add(written);
    }
  }
}
