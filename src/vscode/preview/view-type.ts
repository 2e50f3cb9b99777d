/** View type by which the editor restores previews after a reload; as in `activationEvents` of `package.json`. */
export const previewViewType = 'tagwright.preview';
