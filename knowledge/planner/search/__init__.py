"""Every way of cooking the dinner in this kitchen, laid out and judged."""
