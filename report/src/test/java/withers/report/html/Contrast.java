package withers.report.html;

/** Contrast of two colours, as WCAG 2.2 defines contrast ratio and relative luminance. */
final class Contrast {
  private Contrast() {}

  static double between(String one, String other) {
    double first = luminance(one);
    double second = luminance(other);
    return (Math.max(first, second) + 0.05) / (Math.min(first, second) + 0.05);
  }

  private static double luminance(String colour) {
    return 0.2126 * linear(colour, 1) + 0.7152 * linear(colour, 3) + 0.0722 * linear(colour, 5);
  }

  private static double linear(String colour, int at) {
    double value = Integer.parseInt(colour, at, at + 2, 16) / 255.0;
    return value <= 0.04045 ? value / 12.92 : Math.pow((value + 0.055) / 1.055, 2.4);
  }
}
