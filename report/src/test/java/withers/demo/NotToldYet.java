package withers.demo;

import java.util.List;

/** Kinds that no story of the demo tells yet. */
public final class NotToldYet {

  public static final List<String> KINDS =
      List.of(
          "mistyped-registration",
          "prepaid-unused",
          "registries-disagree",
          "trail-ends-at-purchaser",
          "registered-elsewhere",
          "non-iso-only",
          "stock-unaccounted");

  private NotToldYet() {}
}
