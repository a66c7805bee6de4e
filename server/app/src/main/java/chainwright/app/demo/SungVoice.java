package chainwright.app.demo;

import java.util.List;
import java.util.SplittableRandom;

/**
 * A voice by source and filter: pulses of the glottis through the formants of vowels, and noise
 * through the cavity in front of the teeth for each "s".
 *
 * <p>Sources: the pulse is that of A. E. Rosenberg, "Effect of glottal pulse shape on the quality
 * of natural vowels", JASA 49(2B), 1971, form C; fourth and fifth formant, bandwidths and the
 * difference for the lips' radiation as in Klatt 1980 (both from memory). The band of the "s": the
 * mean spectral peak near 7 kHz of Jongman, Wayland and Wong, JASA 108(3), 2000. Vibrato, jitter
 * and transitions are ours.
 */
final class SungVoice {

  private static final double OPENING_SHARE = 0.4;
  private static final double CLOSING_SHARE = 0.16;
  private static final double VIBRATO_HZ = 5.4;
  private static final double VIBRATO_CENTS = 28;
  private static final double JITTER_SHARE = 0.004;
  private static final double GLIDE_SECONDS = 0.035;
  private static final double ATTACK_SECONDS = 0.04;
  private static final double RELEASE_SECONDS = 0.09;
  private static final double SIBILANT_HZ = 7000;
  private static final double SIBILANT_BANDWIDTH_HZ = 2200;
  private static final double[] BANDWIDTHS_HZ = {80, 100, 140, 220, 280};
  private static final double FOURTH_HZ = 4100;
  private static final double FIFTH_HZ = 4900;

  private final double rateHz;
  private final List<Syllable> syllables;
  private final SplittableRandom random;
  private final double[] formantsHz = new double[3];
  private final Resonator[] tract = new Resonator[BANDWIDTHS_HZ.length];
  private final Resonator teeth;
  private double phase;
  private double pulseHz;
  private double lastPulse;
  private double lastNoise;
  private double voicing;
  private double hiss;

  SungVoice(double rateHz, List<Syllable> syllables, long seed) {
    this.rateHz = rateHz;
    this.syllables = List.copyOf(syllables);
    random = new SplittableRandom(seed);
    for (int i = 0; i < tract.length; i++) {
      tract[i] = new Resonator(rateHz);
    }
    teeth = Resonator.of(rateHz, SIBILANT_HZ, SIBILANT_BANDWIDTH_HZ);
    Syllable first = syllables.get(0);
    for (int k = 0; k < formantsHz.length; k++) {
      formantsHz[k] = first.vowel().formantHz(k);
    }
    pulseHz = first.noteHz();
  }

  /** Sings. */
  double[] render(int frames) {
    double[] out = new double[frames];
    int at = 0;
    for (int i = 0; i < frames; i++) {
      double seconds = i / rateHz;
      while (at + 1 < syllables.size() && seconds >= onset(syllables.get(at + 1))) {
        at++;
      }
      Syllable syllable = syllables.get(at);
      out[i] = vowel(syllable, seconds, i) + sibilant(syllable, seconds);
    }
    return out;
  }

  private static double onset(Syllable syllable) {
    return syllable.startSeconds() - syllable.sibilantSeconds();
  }

  private double vowel(Syllable syllable, double seconds, int frame) {
    double since = seconds - syllable.startSeconds();
    boolean isVoiced = since >= 0 && since < syllable.seconds();
    double target = isVoiced ? Math.pow(10, syllable.gainDb() / 20) : 0;
    voicing += (target - voicing) / ((isVoiced ? ATTACK_SECONDS : RELEASE_SECONDS) * rateHz);
    double cents = VIBRATO_CENTS * Math.min(1, Math.max(0, since / 0.4));
    double wanted =
        syllable.noteHz()
            * Math.pow(2, cents / 1200 * Math.sin(2 * Math.PI * VIBRATO_HZ * seconds));
    pulseHz += (wanted - pulseHz) / (0.02 * rateHz);
    phase += pulseHz / rateHz;
    if (phase >= 1) {
      phase -= 1;
      pulseHz *= 1 + JITTER_SHARE * (random.nextDouble() - 0.5);
    }
    if (frame % 32 == 0) {
      glide(syllable.vowel());
    }
    double pulse = pulse(phase);
    // Breath goes with the voice.
    double sample = pulse - lastPulse + 0.0004 * (random.nextDouble() - 0.5);
    lastPulse = pulse;
    sample *= voicing;
    for (Resonator formant : tract) {
      sample = formant.process(sample);
    }
    return sample;
  }

  private void glide(Vowel vowel) {
    double share = Math.min(1, 32 / (GLIDE_SECONDS * rateHz));
    for (int k = 0; k < tract.length; k++) {
      if (k < formantsHz.length) {
        formantsHz[k] += share * (vowel.formantHz(k) - formantsHz[k]);
        tract[k].tune(formantsHz[k], BANDWIDTHS_HZ[k]);
      } else {
        tract[k].tune(k == 3 ? FOURTH_HZ : FIFTH_HZ, BANDWIDTHS_HZ[k]);
      }
    }
  }

  /** The flow through the glottis, from 0 to 1, over a period from 0 to 1. */
  private static double pulse(double phase) {
    if (phase < OPENING_SHARE) {
      return 0.5 * (1 - Math.cos(Math.PI * phase / OPENING_SHARE));
    }
    double closing = (phase - OPENING_SHARE) / CLOSING_SHARE;
    return closing < 1 ? Math.cos(Math.PI / 2 * closing) : 0;
  }

  private double sibilant(Syllable syllable, double seconds) {
    boolean isHissing = seconds >= onset(syllable) && seconds < syllable.startSeconds() - 0.01;
    hiss += ((isHissing ? 1 : 0) - hiss) / (0.012 * rateHz);
    double noise = random.nextDouble() - 0.5;
    // The difference takes the lows away, which the cavity before the teeth does not have.
    double difference = noise - lastNoise;
    lastNoise = noise;
    return hiss * teeth.process(difference);
  }
}
