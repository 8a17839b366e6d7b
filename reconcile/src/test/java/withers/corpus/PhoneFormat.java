package withers.corpus;

/** How a number is written. */
enum PhoneFormat {
  SPACED,
  PLAIN,
  DASHED,
  BRACKETS,
  SLASH,
  DOTS,
  INTERNATIONAL,
  INTERNATIONAL_PLAIN,
  OPTIONAL_TRUNK,
  DOUBLE_ZERO;

  String write(Phone phone) {
    String area = phone.trunk() + phone.area();
    String local = phone.local();
    return switch (this) {
      case SPACED -> area + " " + grouped(local, " ");
      case PLAIN -> area + local;
      case DASHED -> area + "-" + grouped(local, "-");
      case BRACKETS -> "(" + area + ") " + grouped(local, " ");
      case SLASH -> area + "/" + local;
      case DOTS -> area + "." + grouped(local, ".");
      case INTERNATIONAL -> "+" + phone.code() + " " + phone.area() + " " + grouped(local, " ");
      case INTERNATIONAL_PLAIN -> phone.key();
      case OPTIONAL_TRUNK -> optionalTrunk(phone);
      case DOUBLE_ZERO -> "00" + phone.code() + " " + phone.area() + " " + local;
    };
  }

  private static String optionalTrunk(Phone phone) {
    String trunk = phone.trunk().isEmpty() ? "" : "(" + phone.trunk() + ")";
    return "+" + phone.code() + " " + trunk + phone.area() + " " + grouped(phone.local(), " ");
  }

  /** Whether it can be read in that country. */
  boolean suits(Phone phone, String country) {
    boolean atHome = phone.country().equals(country);
    return this == DOUBLE_ZERO
        ? !country.equals("US") && !country.equals("AU")
        : atHome || compareTo(INTERNATIONAL) >= 0;
  }

  private static String grouped(String local, String separator) {
    int half = local.length() - (local.length() > 7 ? 4 : local.length() / 2 + local.length() % 2);
    return local.substring(0, half) + separator + local.substring(half);
  }
}
