package withers.ingest.fuzz;

import java.nio.charset.StandardCharsets;
import java.util.Comparator;
import java.util.List;
import withers.ingest.TestDirectory;
import withers.ingest.profile.Profiles;
import withers.ingest.profile.SourceProfile;

/** An organisation with three kinds of exports. */
final class Harbour {

  private static final String COMMON =
      """
      organisation: harbour-clinic
      files: 'input*'
      export-date: {from: file-name}
      extent: full
      coverage: {reach: whole}
      limits: {rejects: 100 %, floor: 0}
      key: No
      """;

  private static final String PATIENTS =
      COMMON
          + """
          kind: clinic-patients
          format: {totals: Total}
          columns:
            chip: Chip
            second-chip: Chip 2
            name: Animal
            species: Kind
            born: Born
            implanted: Implanted
            visit: Seen
            scan-result: Scan
            died: Died
            client: {id: Ref, name: Client, phones: [Phone], emails: [Mail], address: [Street], town: Town}
          """;

  private static final String MOVEMENTS =
      COMMON
          + """
          kind: shelter-movements
          disappearance: cancelled
          format: {date: dd/MM/yyyy}
          animal-id: Animal No
          columns:
            chip: Chip
            moved: Date
            movement-type: What
            movement-with: {organisation: Other, name: Person, phones: [Phone]}
          values:
            movement-type: {stray: intake-stray, rehomed: adoption, back: return-to-owner}
          """;

  private static final String SUPPLY =
      COMMON
          + """
          kind: chip-supply
          columns:
            first: From
            last: To
            supplied: On
            purchaser: {name: Buyer}
          """;

  private static final List<SourceProfile> PROFILES =
      List.of(profile(PATIENTS), profile(MOVEMENTS), profile(SUPPLY));

  private Harbour() {}

  /** The profile whose columns the text names most often. */
  static SourceProfile profileFor(String text) {
    return PROFILES.stream()
        .max(Comparator.comparingLong(profile -> named(profile, text)))
        .orElseThrow();
  }

  private static long named(SourceProfile profile, String text) {
    return profile.headers().stream().filter(text::contains).count();
  }

  private static SourceProfile profile(String yaml) {
    try (Scratch scratch = new Scratch()) {
      scratch.file("sources/harbour-clinic.yaml", yaml.getBytes(StandardCharsets.UTF_8));
      return Profiles.read(scratch.folder("sources"), TestDirectory.HARBOUR_CLINIC).all().get(0);
    }
  }
}
