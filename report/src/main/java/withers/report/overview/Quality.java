package withers.report.overview;

/**
 * How well a source's records can be read.
 *
 * @param rows how many its newest export had
 * @param rejected how many of these could not be read
 * @param damaged numbers of its records that lost digits or can be read in several ways, so that
 *     they lead to no animal
 * @param unnumbered records of it that state no number, and no other record of it does
 */
public record Quality(long rows, long rejected, long damaged, long unnumbered) {

  /** Which part of the newest export's rows could not be read, from 0 to 1; 0 when it had none. */
  public double rejectedShare() {
    return rows == 0 ? 0 : (double) rejected / rows;
  }
}
