package withers.ingest.inspect;

import static withers.ingest.profile.ColumnName.BORN;
import static withers.ingest.profile.ColumnName.DIED;
import static withers.ingest.profile.ColumnName.ENDED;
import static withers.ingest.profile.ColumnName.IMPLANTED;
import static withers.ingest.profile.ColumnName.INTAKE;
import static withers.ingest.profile.ColumnName.INTAKE_TYPE;
import static withers.ingest.profile.ColumnName.MOVED;
import static withers.ingest.profile.ColumnName.OUTCOME;
import static withers.ingest.profile.ColumnName.OUTCOME_TYPE;
import static withers.ingest.profile.ColumnName.REGISTERED;
import static withers.ingest.profile.ColumnName.REPORTED;
import static withers.ingest.profile.ColumnName.RETURNED;
import static withers.ingest.profile.ColumnName.REUNITED;
import static withers.ingest.profile.ColumnName.SOLD;
import static withers.ingest.profile.ColumnName.UPDATED;
import static withers.ingest.profile.ColumnName.VISIT;

import java.util.List;
import java.util.Map;
import java.util.Set;
import withers.ingest.profile.ColumnName;
import withers.ingest.profile.PartyName;

/**
 * What two columns of days say for each other, and columns that are filled where a day is: lives
 * have an order. The figures are our judgement, common practice without a source.
 */
record DayPairs(Relations relations) {

  private record InOrder(ColumnName first, ColumnName second) {}

  private static final Set<InOrder> ORDERS =
      Set.of(
          new InOrder(BORN, IMPLANTED),
          new InOrder(BORN, VISIT),
          new InOrder(BORN, SOLD),
          new InOrder(BORN, INTAKE),
          new InOrder(BORN, MOVED),
          new InOrder(BORN, DIED),
          new InOrder(BORN, REGISTERED),
          new InOrder(BORN, UPDATED),
          new InOrder(BORN, OUTCOME),
          new InOrder(IMPLANTED, VISIT),
          new InOrder(IMPLANTED, DIED),
          new InOrder(SOLD, RETURNED),
          new InOrder(INTAKE, OUTCOME),
          new InOrder(REGISTERED, UPDATED),
          new InOrder(REGISTERED, ENDED),
          new InOrder(UPDATED, ENDED),
          new InOrder(REPORTED, REUNITED));

  private static final Map<PartyName, List<ColumnName>> WITH =
      Map.of(
          PartyName.INTAKE_FROM, List.of(INTAKE, INTAKE_TYPE),
          PartyName.OUTCOME_TO, List.of(OUTCOME, OUTCOME_TYPE),
          PartyName.BUYER, List.of(SOLD));

  double days(Field f, Column a, Field g, Column b) {
    if (f.use() != Use.DAY || g.use() != Use.DAY) {
      return 0;
    }
    ColumnName one = f.column().orElseThrow();
    ColumnName two = g.column().orElseThrow();
    if (one == INTAKE && two == OUTCOME) {
      return order(relations.order(a, b)) * 1.5;
    }
    if (!ORDERS.contains(new InOrder(one, two))) {
      return 0;
    }
    return order(relations.order(a, b)) + age(one, two, relations.order(a, b));
  }

  private static double order(Relations.Order order) {
    if (order.rows() == 0) {
      return 0;
    }
    boolean tells = order.rows() >= 10 && order.apart() > 0.1;
    if (order.inOrder() >= 0.97) {
      return tells ? 3 : 0.5;
    }
    return order.inOrder() >= 0.85 ? 0 : tells ? -8 : -2;
  }

  /** Animals are sold young; patients are of any age. */
  private static double age(ColumnName one, ColumnName two, Relations.Order order) {
    if (one != BORN || order.rows() < 10) {
      return 0;
    }
    boolean young = order.young() >= 0.9;
    if (two == SOLD) {
      return young ? 5 : -3;
    }
    return two == VISIT && young ? -4 : 0;
  }

  /** Somebody stands in a row only with the day on which they came in. */
  double withTheirDay(Field f, Column a, Field g, Column b) {
    boolean belongs =
        f.party().isPresent()
            && g.column().isPresent()
            && WITH.getOrDefault(f.party().get(), List.of()).contains(g.column().get());
    boolean typeOfDay = f.is(INTAKE_TYPE) && g.is(INTAKE) || f.is(OUTCOME_TYPE) && g.is(OUTCOME);
    if (!belongs && !typeOfDay || a.isEmpty() || b.fill() > Relations.ALWAYS) {
      return 0;
    }
    double within = relations.within(a, b);
    return within >= 0.97 ? 1.5 : within >= 0.85 ? -1 : -6;
  }
}
