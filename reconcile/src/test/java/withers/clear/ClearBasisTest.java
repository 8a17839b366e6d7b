package withers.clear;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import withers.clear.ClearBasis.Traits;
import withers.codec.ByteReader;
import withers.codec.Bytes;
import withers.id.ImportId;
import withers.id.OrganisationId;
import withers.id.SourceId;
import withers.source.SourceKind;

/** All of invented sources. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class ClearBasisTest {

  private static final LocalDate DAY = LocalDate.of(2026, 9, 1);
  private static final OrganisationId NORTH = new OrganisationId("north");
  private static final OrganisationId SOUTH = new OrganisationId("south");
  private static final ImportId FIRST = new ImportId(new UUID(1, 1));
  private static final ImportId SECOND = new ImportId(new UUID(1, 2));
  private static final SourceId CLINIC = new SourceId("clinic");

  private static final ClearBasis BASIS =
      new ClearBasis(DAY, Set.of(FIRST), Map.of(CLINIC, clinic("scans")), Map.of(NORTH, DAY));

  private static Traits clinic(String filled) {
    return new Traits(new OrganisationId("hill"), SourceKind.CLINIC_PATIENTS, Set.of(filled));
  }

  @Test
  void what_was_clear_is_clear_on_later_days_and_by_more_exports() {
    assertThat(BASIS.holdsFor(BASIS)).isTrue();
    assertThat(BASIS.holdsFor(on(DAY.plusDays(1)))).isTrue();
    assertThat(BASIS.holdsFor(hearing(Set.of(FIRST, SECOND)))).isTrue();
    assertThat(
            BASIS.holdsFor(
                of(Map.of(CLINIC, clinic("scans"), new SourceId("vale"), clinic("phones")))))
        .isTrue();
    assertThat(BASIS.holdsFor(exported(Map.of(NORTH, DAY.plusDays(1))))).isTrue();
  }

  @Test
  void it_is_looked_at_again_when_anything_else_is_different() {
    assertThat(BASIS.holdsFor(on(DAY.minusDays(1)))).isFalse();
    assertThat(BASIS.holdsFor(hearing(Set.of(SECOND)))).isFalse();
    assertThat(BASIS.holdsFor(of(Map.of(CLINIC, clinic("phones"))))).isFalse();
    assertThat(BASIS.holdsFor(of(Map.of()))).isFalse();
    assertThat(BASIS.holdsFor(exported(Map.of(NORTH, DAY.minusDays(1))))).isFalse();
    assertThat(BASIS.holdsFor(exported(Map.of(NORTH, DAY, SOUTH, DAY)))).isFalse();
    assertThat(BASIS.holdsFor(exported(Map.of()))).isFalse();
  }

  @Test
  void a_run_that_looks_back_or_sees_the_same_is_no_news() {
    assertThat(BASIS.isNews(BASIS)).isFalse();
    assertThat(on(DAY.minusDays(1)).isNews(BASIS)).isFalse();
    assertThat(on(DAY.plusDays(1)).isNews(BASIS)).isTrue();
    assertThat(hearing(Set.of(FIRST, SECOND)).isNews(BASIS)).isTrue();
  }

  @Test
  void it_comes_back_from_its_bytes() {
    Bytes out = new Bytes();
    BASIS.write(out);

    assertThat(ClearBasis.read(new ByteReader(out.toArray()))).isEqualTo(BASIS);
  }

  private static ClearBasis on(LocalDate day) {
    return new ClearBasis(day, BASIS.heard(), BASIS.sources(), BASIS.newest());
  }

  private static ClearBasis hearing(Set<ImportId> imports) {
    return new ClearBasis(DAY, imports, BASIS.sources(), BASIS.newest());
  }

  private static ClearBasis of(Map<SourceId, Traits> sources) {
    return new ClearBasis(DAY, BASIS.heard(), sources, BASIS.newest());
  }

  private static ClearBasis exported(Map<OrganisationId, LocalDate> newest) {
    return new ClearBasis(DAY, BASIS.heard(), BASIS.sources(), newest);
  }
}
