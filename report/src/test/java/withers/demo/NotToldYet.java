package withers.demo;

import java.util.List;

/** Kinds that no story of the demo tells yet. */
public final class NotToldYet {

  public static final List<String> KINDS =
      List.of(
          "lost-unreachable",
          "number-on-two-animals",
          "custody-unclear",
          "placeholder-contact",
          "mistyped-registration",
          "prepaid-unused",
          "registries-disagree",
          "trail-ends-at-purchaser",
          "not-detected",
          "registered-elsewhere",
          "scan-overdue",
          "non-iso-only",
          "stock-unaccounted");

  private NotToldYet() {}
}
