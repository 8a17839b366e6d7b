package withers.ingest.profile;

import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import withers.fact.Slot;
import withers.yaml.Choices;
import withers.yaml.Fields;

/** Reads how much of its records a source exports. */
final class ExtentReader {

  private static final Set<Slot> WINDOW_SLOTS =
      EnumSet.of(
          Slot.SUPPLY,
          Slot.IMPLANT,
          Slot.VISIT,
          Slot.INTAKE,
          Slot.OUTCOME,
          Slot.MOVEMENT,
          Slot.SALE,
          Slot.REGISTRATION,
          Slot.REPORT);

  private ExtentReader() {}

  static ExtentRule extent(Fields fields) {
    ExtentRule.Kind kind = fields.choice("extent", ExtentRule.Kind.class);
    Optional<ExtentRule.WindowRule> window = fields.map("window", ExtentReader::window);
    if (kind == ExtentRule.Kind.WINDOW) {
      fields.require("window");
    } else if (fields.has("window")) {
      fields.problem(
          "window",
          "Expected \"window\" only with \"extent: window\", but found it",
          "take it out");
    }
    return new ExtentRule(kind, window);
  }

  private static ExtentRule.WindowRule window(Fields fields) {
    return new ExtentRule.WindowRule(
        fields.value("by", ExtentReader::windowSlot, Slot.VISIT),
        fields.choice("bounds", ExtentRule.Bounds.class));
  }

  private static Slot windowSlot(String text) {
    return WINDOW_SLOTS.stream()
        .filter(slot -> Choices.name(slot).equals(text))
        .findFirst()
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "Expected one of %s, but found \"%s\""
                        .formatted(
                            String.join(", ", WINDOW_SLOTS.stream().map(Choices::name).toList()),
                            text)));
  }
}
