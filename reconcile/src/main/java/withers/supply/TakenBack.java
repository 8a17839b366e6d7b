package withers.supply;

import java.time.LocalDate;
import withers.chip.ChipNumber;

/** That nothing is in effect any more of what was said of a number, since an export's date. */
record TakenBack(ChipNumber number, LocalDate on) {}
