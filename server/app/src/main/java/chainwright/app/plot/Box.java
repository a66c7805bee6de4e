package chainwright.app.plot;

/** A rectangle on the sheet; y grows downwards. */
record Box(double left, double top, double right, double bottom) {

  double width() {
    return right - left;
  }

  double height() {
    return bottom - top;
  }

  /** Returns where a fraction of the horizontal axis lies. */
  double atX(double fraction) {
    return left + fraction * width();
  }

  /** Returns where a fraction of the vertical axis lies. */
  double atY(double fraction) {
    return bottom - fraction * height();
  }

  boolean contains(Box other) {
    return other.left >= left && other.right <= right && other.top >= top && other.bottom <= bottom;
  }

  double overlap(Box other) {
    double w = Math.min(right, other.right) - Math.max(left, other.left);
    double h = Math.min(bottom, other.bottom) - Math.max(top, other.top);
    return w > 0 && h > 0 ? w * h : 0;
  }
}
