package withers.ingest.inspect;

import static withers.ingest.profile.ColumnName.CHIP;
import static withers.ingest.profile.ColumnName.ENDED;
import static withers.ingest.profile.ColumnName.END_REASON;
import static withers.ingest.profile.ColumnName.INTAKE;
import static withers.ingest.profile.ColumnName.INTAKE_TYPE;
import static withers.ingest.profile.ColumnName.OUTCOME;
import static withers.ingest.profile.ColumnName.OUTCOME_TYPE;
import static withers.ingest.profile.ColumnName.SECOND_CHIP;

import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import withers.ingest.profile.ColumnName;
import withers.ingest.profile.PartyName;

/** What a layout needs and which fields go together, in bits that are lost where it is not so. */
final class Structure {

  private static final double NEEDED_COLUMN = -12;
  private static final double NEEDED_PARTY = -8;
  private static final double ONE_OF_A_PAIR = -4;

  private final Set<ColumnName> needed;
  private final List<PartyName> neededParties;

  Structure(Layout layout) {
    this.needed = layout.needed();
    this.neededParties = layout.neededParties();
  }

  double of(List<Candidate> chosen) {
    Set<ColumnName> columns = EnumSet.noneOf(ColumnName.class);
    Map<PartyName, Set<Use>> parties = new EnumMap<>(PartyName.class);
    boolean hasKey = false;
    for (Candidate candidate : chosen) {
      Field field = candidate.field();
      field.column().ifPresent(columns::add);
      field
          .party()
          .ifPresent(
              party ->
                  parties.computeIfAbsent(party, p -> EnumSet.noneOf(Use.class)).add(field.use()));
      hasKey |= field.use() == Use.KEY;
    }
    return (hasKey ? 0 : -3) + columns(columns) + parties(parties);
  }

  private double columns(Set<ColumnName> columns) {
    double lost = NEEDED_COLUMN * needed.stream().filter(name -> !columns.contains(name)).count();
    return lost
        + pair(columns, INTAKE, INTAKE_TYPE)
        + pair(columns, OUTCOME, OUTCOME_TYPE)
        + (columns.contains(END_REASON) && !columns.contains(ENDED) ? ONE_OF_A_PAIR : 0)
        + (columns.contains(SECOND_CHIP) && !columns.contains(CHIP) ? ONE_OF_A_PAIR * 2 : 0);
  }

  private static double pair(Set<ColumnName> columns, ColumnName one, ColumnName two) {
    return columns.contains(one) == columns.contains(two) ? 0 : ONE_OF_A_PAIR;
  }

  private double parties(Map<PartyName, Set<Use>> parties) {
    double lost = 0;
    for (PartyName party : neededParties) {
      lost += parties.containsKey(party) ? 0.5 : NEEDED_PARTY;
    }
    for (Map.Entry<PartyName, Set<Use>> party : parties.entrySet()) {
      lost += somebody(party.getValue());
      lost += neededParties.contains(party.getKey()) ? 0 : rarity(party.getKey());
    }
    return lost;
  }

  private static double somebody(Set<Use> uses) {
    boolean named = uses.stream().anyMatch(Use::isName);
    boolean reachable =
        uses.contains(Use.PHONE) || uses.contains(Use.EMAIL) || uses.contains(Use.ADDRESS);
    double half = uses.contains(Use.GIVEN_NAME) == uses.contains(Use.FAMILY_NAME) ? 0 : -2.5;
    return half + (named ? 0 : reachable ? -3 : -12);
  }

  private static double rarity(PartyName party) {
    return switch (party) {
      case ORGANISATION -> -6;
      case IMPLANTER, EMERGENCY -> -4;
      case SECONDARY, INTAKE_FROM, HOLDER -> -2;
      default -> -1;
    };
  }
}
