/** Signs that stand for words where there is no room for them. */

/** Behind the number of a piece whose order is a rush. */
export const rushSign = '»';
