package org.seacairn.plan;

import java.util.LinkedHashMap;
import java.util.Map;
import org.seacairn.plan.SitingPlan.Uncertainty;

/**
 * Orders of hydrographic survey and the greatest total vertical and horizontal uncertainty that each
 * allows at 95 % confidence: IHO S-44 edition 6.x, table 1 (read in texts that quote the table, not
 * in the standard itself).
 */
enum SurveyOrder {
    EXCLUSIVE("exclusive", 0.15, 0.0075, 1, 0),
    SPECIAL("special", 0.25, 0.0075, 2, 0),
    ORDER_1A("1a", 0.5, 0.013, 5, 0.05),
    ORDER_1B("1b", 0.5, 0.013, 5, 0.05),
    ORDER_2("2", 1, 0.023, 20, 0.1);

    private final String label;
    private final Uncertainty uncertainty;

    SurveyOrder(String label, double verticalFixedM, double verticalShare, double horizontalFixedM,
            double horizontalShare) {
        this.label = label;
        this.uncertainty = new Uncertainty(verticalFixedM, verticalShare, horizontalFixedM, horizontalShare,
                "IHO S-44 order " + label);
    }

    Uncertainty uncertainty() {
        return uncertainty;
    }

    /** The orders by the words that a plan uses, strictest first. */
    static Map<String, SurveyOrder> byLabel() {
        Map<String, SurveyOrder> orders = new LinkedHashMap<>();
        for (SurveyOrder order : values()) {
            orders.put(order.label, order);
        }
        return orders;
    }
}
