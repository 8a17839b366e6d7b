package withers.ingest.profile;

import java.util.List;
import java.util.Optional;
import withers.fact.ScanResult;
import withers.fact.Species;
import withers.yaml.Choices;

/** Our words, column by column: what a profile can turn the export's words into. */
public final class Vocabulary {

  private Vocabulary() {}

  /** The constants whose words a column's cells mean; empty when any text will do. */
  public static Optional<Class<? extends Enum<?>>> of(ColumnName column) {
    return switch (column) {
      case SPECIES -> Optional.of(Species.class);
      case SCAN_RESULT -> Optional.of(ScanResult.class);
      case DECEASED, PREPAID -> Optional.of(YesNo.class);
      case INTAKE_TYPE, OUTCOME_TYPE, MOVEMENT_TYPE -> Optional.of(Movement.class);
      case STATUS, END_REASON -> Optional.of(RegistryStatus.class);
      case REPORT_TYPE -> Optional.of(Report.class);
      default -> Optional.empty();
    };
  }

  /** The words of a column; empty when any text will do. */
  static List<String> words(ColumnName column) {
    return of(column).map(Vocabulary::words).orElse(List.of());
  }

  private static List<String> words(Class<? extends Enum<?>> type) {
    return List.of(type.getEnumConstants()).stream().map(Choices::name).toList();
  }
}
