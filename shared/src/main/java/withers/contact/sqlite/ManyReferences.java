package withers.contact.sqlite;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Collection;
import java.util.List;
import withers.contact.ContactRef;

/** A query about many references, asked about some hundred at a time. */
final class ManyReferences implements AutoCloseable {

  /** References asked for in one query: each query costs more than a look-up does. */
  private static final int TOGETHER = 200;

  /** Two people are often asked for alone: a query filled up takes several times as long. */
  private static final int FEW = 4;

  /** Takes one row of the answer. */
  @FunctionalInterface
  interface Taker {
    void take(ResultSet row) throws SQLException;
  }

  private final PreparedStatement many;
  private final PreparedStatement few;

  /**
   * @param start of the query, up to the list of references
   */
  ManyReferences(Connection connection, String start) throws SQLException {
    this.many = connection.prepareStatement(start + places(TOGETHER));
    this.few = connection.prepareStatement(start + places(FEW));
  }

  private static String places(int number) {
    return "(?" + ", ?".repeat(number - 1) + ")";
  }

  /** Hands over all rows about these references, in no order. */
  void ask(Collection<ContactRef> references, Taker taker) throws SQLException {
    // In the order of the index, neighbours share its pages.
    List<ContactRef> inOrder = references.stream().sorted().toList();
    for (int from = 0; from < inOrder.size(); from += TOGETHER) {
      askTogether(inOrder.subList(from, Math.min(inOrder.size(), from + TOGETHER)), taker);
    }
  }

  private void askTogether(List<ContactRef> references, Taker taker) throws SQLException {
    boolean areFew = references.size() <= FEW;
    PreparedStatement query = areFew ? few : many;
    for (int i = 0; i < (areFew ? FEW : TOGETHER); i++) {
      // The last query is filled up with a reference that it has already.
      ContactRef reference = references.get(Math.min(i, references.size() - 1));
      query.setBytes(i + 1, References.bytes(reference));
    }
    try (ResultSet rows = query.executeQuery()) {
      while (rows.next()) {
        taker.take(rows);
      }
    }
  }

  @Override
  public void close() throws SQLException {
    many.close();
    few.close();
  }
}
