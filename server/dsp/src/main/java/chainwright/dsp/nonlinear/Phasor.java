package chainwright.dsp.nonlinear;

/** A complex number: a gain and a phase at one frequency. */
record Phasor(double re, double im) {

  static final Phasor ONE = new Phasor(1, 0);

  /** Returns the number of magnitude 1 at this angle. */
  static Phasor ofAngle(double radians) {
    return new Phasor(Math.cos(radians), Math.sin(radians));
  }

  Phasor plus(Phasor other) {
    return new Phasor(re + other.re, im + other.im);
  }

  Phasor times(Phasor other) {
    return new Phasor(re * other.re - im * other.im, re * other.im + im * other.re);
  }

  Phasor dividedBy(Phasor other) {
    double square = other.re * other.re + other.im * other.im;
    return new Phasor(
        (re * other.re + im * other.im) / square, (im * other.re - re * other.im) / square);
  }

  double magnitude() {
    return Math.hypot(re, im);
  }

  double angle() {
    return Math.atan2(im, re);
  }
}
