/** The picture of what generators make, where it lies in the guide. */
export const shapesPicture = 'shapes.svg';
