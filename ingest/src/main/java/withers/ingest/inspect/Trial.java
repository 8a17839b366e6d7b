package withers.ingest.inspect;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import withers.chip.ChipNumberReader;
import withers.contact.ContactRef;
import withers.id.OrganisationId;
import withers.id.SourceId;
import withers.ingest.change.Disappearance;
import withers.ingest.profile.ColumnMap;
import withers.ingest.profile.ColumnName;
import withers.ingest.profile.CoverageRule;
import withers.ingest.profile.DatePattern;
import withers.ingest.profile.ExportDateRule;
import withers.ingest.profile.ExtentRule;
import withers.ingest.profile.Limits;
import withers.ingest.profile.PartyColumns;
import withers.ingest.profile.PartyName;
import withers.ingest.profile.SourceProfile;
import withers.ingest.profile.ValueMaps;
import withers.ingest.rows.Header;
import withers.ingest.rows.Row;
import withers.ingest.translate.RowTranslator;
import withers.ingest.translate.Surroundings;
import withers.ingest.translate.Translation;
import withers.source.Coverage;
import withers.yaml.Choices;

/** Reads rows as a proposal has them, as if it were a profile already. */
public final class Trial {

  // Nothing is written: where a statement would refer to a person, it refers to nobody.
  private static final ContactRef NOBODY = new ContactRef(0, 0, 0);

  /**
   * A row that could not be read.
   *
   * @param column header of the column that it is about, or empty
   * @param code as quarantine files have it
   * @param reason without anything that is in the row
   */
  public record Unread(long line, String column, String code, String reason) {}

  private final RowTranslator translator;

  private Trial(RowTranslator translator) {
    this.translator = translator;
  }

  /** A trial of a draft; empty when nothing in it names a record. */
  public static Optional<Trial> of(Draft draft, Header header) {
    if (draft.proposal().key().headers().isEmpty()) {
      return Optional.empty();
    }
    Surroundings around =
        new Surroundings(LocalDate.EPOCH, 0, new ChipNumberReader(true), contact -> NOBODY);
    SourceProfile profile = profile(draft.proposal(), draft.writing());
    return Optional.of(new Trial(new RowTranslator(profile, header, around)));
  }

  /** What keeps a row from being read; empty when nothing does. */
  public Optional<Unread> read(Row row) {
    return translator.translate(row) instanceof Translation.Rejected no
        ? Optional.of(
            new Unread(
                row.line(), no.reject().column(), no.reject().code().name(), no.reject().message()))
        : Optional.empty();
  }

  private static SourceProfile profile(Proposal proposal, Writing writing) {
    return new SourceProfile(
        new SourceId("inspected"),
        new OrganisationId("inspected"),
        proposal.kind(),
        List.of("*"),
        writing.with(DatePattern.of(proposal.date().pattern())),
        new ExportDateRule(ExportDateRule.From.COMMAND, ""),
        new ExtentRule(ExtentRule.Kind.CHANGES, Optional.empty()),
        Disappearance.NO_LONGER_LISTED,
        new CoverageRule(Coverage.Reach.ACCOUNT, List.of(), 0, Set.of()),
        new Limits(100, 0),
        proposal.key().headers(),
        proposal.field("animal-id").map(Proposal.Recognised::header),
        columns(proposal),
        new ValueMaps(proposal.values()),
        List.of(),
        "");
  }

  private static ColumnMap columns(Proposal proposal) {
    Map<ColumnName, String> headers = new EnumMap<>(ColumnName.class);
    Map<PartyName, List<Proposal.Recognised>> parties = new EnumMap<>(PartyName.class);
    for (Proposal.Recognised field : proposal.fields()) {
      int dot = field.path().indexOf('.');
      if (dot > 0) {
        parties
            .computeIfAbsent(
                Choices.read(PartyName.class, field.path().substring(0, dot)),
                party -> new ArrayList<>())
            .add(field);
      } else if (!field.path().equals("animal-id")) {
        headers.put(Choices.read(ColumnName.class, field.path()), field.header());
      }
    }
    Map<PartyName, PartyColumns> columns = new EnumMap<>(PartyName.class);
    parties.forEach((name, fields) -> columns.put(name, party(fields)));
    return new ColumnMap(headers, Map.of(), columns);
  }

  private static PartyColumns party(List<Proposal.Recognised> fields) {
    return new PartyColumns(
        one(fields, Use.PARTY_ID),
        one(fields, Use.FULL_NAME),
        one(fields, Use.GIVEN_NAME),
        one(fields, Use.FAMILY_NAME),
        all(fields, Use.PHONE),
        all(fields, Use.EMAIL),
        all(fields, Use.ADDRESS),
        one(fields, Use.POSTCODE),
        one(fields, Use.TOWN),
        one(fields, Use.REGION),
        one(fields, Use.COUNTRY),
        one(fields, Use.ORGANISATION));
  }

  private static Optional<String> one(List<Proposal.Recognised> fields, Use use) {
    return all(fields, use).stream().findFirst();
  }

  private static List<String> all(List<Proposal.Recognised> fields, Use use) {
    return fields.stream()
        .filter(field -> field.path().endsWith("." + use.word()))
        .map(Proposal.Recognised::header)
        .toList();
  }
}
